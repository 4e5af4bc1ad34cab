using CsCheck;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books.Edits;

public class BookTextPropertyTests
{
    private sealed record Edit(int What, int At, double Number, Item Item, Job[] Jobs);

    private static readonly Gen<Edit> AnyEdit =
        from what in Gen.Int[0, 21]
        from at in Gen.Int[0, 1000]
        from number in Gen.Double[0.5, 20]
        from item in MadeBooks.Item
        from jobs in MadeBooks.Job.Array[1, 3]
        select new Edit(what, at, number, item, jobs);

    private static readonly Gen<string> AnyText = Gen.Select(
        MadeBooks.Any([BookTextTests.Block, BookTextTests.Flow, SampleBook.Good, .. ConfigFiles.PracticeGardens.Select(File.ReadAllText)]),
        MadeBooks.Any("as is", "CRLF", "no final newline", "byte order mark"),
        BookTextTests.Laid);

    private static IReadOnlyList<T> Change<T>(IReadOnlyList<T> list, int at, Func<T, T> change) =>
        [.. list.Select((one, index) => index == at % list.Count ? change(one) : one)];

    private static IReadOnlyList<T> Drop<T>(IReadOnlyList<T> list, int at) => [.. list.Where((_, index) => index != at % list.Count)];

    private static GardenBook Apply(GardenBook book, Edit edit)
    {
        var (_, at, number, item, _) = edit;
        var id = $"new-{at}";
        return edit.What switch
        {
            0 => book with { Name = item.Name, ShoppingHours = number },
            1 => book with { Surveyed = new LocalDate(2027, 1, 1).PlusDays(at), Language = Language.Spanish },
            2 => book with { Units = UnitSystem.MetricKnots, Surveyed = null },
            3 => book with { People = Change(book.People, at, one => one with { Name = item.Name, LiftKg = 1 + number, NoLadder = false, LadderAlone = true }) },
            4 => book with { People = Change(book.People, at, one => one with { DaysOff = [new(2027, 9, 3)], Hours = [], Units = UnitSystem.Metric }) },
            5 => book with { People = [.. book.People, new Person(id, item.Name, "new@example.org", PersonRole.Helper, [new([IsoDayOfWeek.Monday], null, new(7, 0), new(9, 0))], [], 13, true)] },
            6 => book with { People = Drop(book.People, at) },
            7 => book with { Sites = Change(book.Sites, at, one => one with { Name = item.Name, Datum = "MSL", GroundM = number, Codes = ["XQ001", "XQ002"] }) },
            8 => book with { Areas = Change(book.Areas, at, one => one with { Exposure = Exposure.Funnel, GroundM = null, GlassM = number }) },
            9 => book with { Areas = [.. book.Areas, new Area(id, item.Name, book.Sites[0].Id, Exposure.Sheltered) { WaterM = number }] },
            10 => book with { Areas = Drop(book.Areas, at) },
            11 => book with { Stores = book.Stores.Count == 0 ? [] : Change(book.Stores, at, one => one with { FloorM2 = number, DoorM = null }) },
            12 => book with { Stores = [.. book.Stores, new StorePlace(id, item.Name, book.Sites[0].Id, null, number)] },
            13 => book with { Stores = book.Stores.Count == 0 ? [] : Drop(book.Stores, at) },
            14 => book with { Supplies = book.Supplies.Count == 0 ? [] : Change(book.Supplies, at, one => one with { Quantity = number }) },
            15 => book with { Supplies = [.. book.Supplies, new Supply($"{item.Name} {at}", number, "roll")] },
            16 => book with { Supplies = book.Supplies.Count == 0 ? [] : Drop(book.Supplies, at) },
            17 => book with { Items = book.Items.Count == 0 ? [] : Change(book.Items, at, one => item with { Id = one.Id, AreaId = one.AreaId, Jobs = one.Jobs, JobsTypical = one.JobsTypical }) },
            18 => book with { Items = [.. book.Items, item with { Id = id, AreaId = book.Areas[0].Id, JobsTypical = at % 2 == 0, Jobs = at % 2 == 0 ? [] : Needed(edit.Jobs) }] },
            19 => book with { Items = book.Items.Count == 0 ? [] : Drop(book.Items, at) },
            20 => book with { Items = book.Items.Count == 0 ? [] : Change(book.Items, at, one => one with { JobsTypical = at % 3 == 0, Jobs = at % 3 == 1 ? [] : Needed(edit.Jobs) }) },
            _ => book with { Items = book.Items.Count == 0 ? [] : Change(book.Items, at, one => one.Jobs.Count == 0 ? one with { Count = 7 } : one with { Jobs = Change(one.Jobs, at, job => job with { Minutes = 1 + at, LeftOut = job.LeftOut & ~JobParts.Minutes, Fallback = item.Name }) }) },
        };
    }

    private static Job[] Needed(Job[] jobs) => [.. jobs.Select(job => job with { LeftOut = job.LeftOut & ~JobParts.Minutes })];

    /// <summary>
    /// Whatever pages do, several things at once or one after the other: the text that comes of it says what is wanted, the file
    /// is not written anew, and each remark is there unless lines with one had to go. A change that is refused could not be read.
    /// </summary>
    [Fact]
    public void Rewrite_AnyEdits_ReadsBackAsWanted()
    {
        var made = 0;
        Gen.Select(AnyText, AnyEdit.Array[1, 3].Array[1, 3]).Sample(
            (text, turns) =>
            {
                var remarks = Remarks(text);
                foreach (var edits in turns)
                {
                    var book = GardenReader.Read(text, "quay.yaml").Value!;
                    var wanted = edits.DistinctBy(edit => edit.At).Aggregate(book, Apply);
                    var goal = GardenReader.Read(GardenWriter.Write(wanted), "quay.yaml");
                    var rewrite = BookText.Rewrite(text, "quay.yaml", book, wanted);
                    Assert.Equal(goal.IsGood, rewrite.IsGood);
                    if (!goal.IsGood) continue;

                    var kept = Assert.IsType<BookRewrite.Kept>(rewrite.Value);
                    Assert.Equal(GardenWriter.Write(goal.Value!), GardenWriter.Write(GardenReader.Read(kept.Text, "quay.yaml").Value!));
                    text = kept.Text;
                    Interlocked.Increment(ref made);
                    if (kept.TakesRemarks) remarks = [.. remarks.Where(remark => Lines(text).Any(line => line.EndsWith(remark, StringComparison.Ordinal)))];
                    Assert.All(remarks, remark => Assert.Contains(Lines(text), line => line.EndsWith(remark, StringComparison.Ordinal)));
                }
            },
            iter: 300);
        Assert.True(made > 200, $"only {made} changes could be made at all");
    }

    /// <summary>Those of the books above, in which no text holds a hash.</summary>
    private static List<string> Remarks(string text) => [.. Lines(text).Where(line => line.Contains('#')).Select(line => line[line.IndexOf('#')..])];

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").Split('\n');
}
