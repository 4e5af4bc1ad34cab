using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Tests;
using StormClock.Core.Units;
using StormClock.Service.Commands;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Rehearsals;

namespace StormClock.Service.Tests.Replays;

/// <summary>
/// Archived storms with people who keep to the plan: does planned work end before the wind that stops it, as later analysed, and is more
/// saved than with the same news on paper?
/// </summary>
public class ReplayTests(ITestOutputHelper output)
{
    /// <summary>The whole archive of forecast/advisories as issued, beside the repository.</summary>
    private static readonly string[] Storms =
    [
        "al142016-matthew", "al092017-harvey", "al112017-irma", "al062018-florence", "al142018-michael", "al092020-isaias", "al282020-zeta", "al072022-fiona", "al092022-ian",
        "al172022-nicole", "al102023-idalia", "ep092023-hilary", "al022024-beryl", "al042024-debby", "al092024-helene", "al032025-chantal", "al132025-melissa",
    ];

    private const int PlacesOfAStorm = 6;
    private const double MostLate = 0.08;

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Plan_EveryArchivedStorm_EndsBeforeItsLimitsAndSavesMoreThanPaper()
    {
        var gardens = Storms.SelectMany(storm => Play(storm, PlacesOfAStorm)).ToList();
        foreach (var storm in gardens.GroupBy(garden => garden.Storm)) output.WriteLine(new ReplayTally([.. storm]).Line(storm.Key));
        foreach (var book in gardens.GroupBy(garden => garden.Garden)) output.WriteLine(new ReplayTally([.. book]).Line(book.Key));
        foreach (var work in Enum.GetValues<WorkClass>()) output.WriteLine(new ReplayTally([.. gardens.Select(garden => Only(garden, work))]).Line(work.ToString()));
        var all = new ReplayTally(gardens);
        output.WriteLine(all.Line("all"));
        foreach (var garden in gardens) WriteLate(garden);
        AssertInTime(all);

        // Without stops too much work ends too late, so that the share means something.
        Assert.True(all.HeedlessLate > MostLate, $"only {all.HeedlessLate:P1} without stops");
        Assert.True(all.Saved > Math.Max(all.SavedOnPaper(0), all.SavedOnPaper(1)));
    }

    [Theory]
    [InlineData("al092022-ian")]
    [InlineData("al102023-idalia")]
    public void Plan_ArchivedStorm_EndsBeforeItsLimits(string storm)
    {
        var tally = new ReplayTally(Play(storm, 1));
        output.WriteLine(tally.Line(storm));
        AssertInTime(tally);
        Assert.True(tally.Saved > Math.Max(tally.SavedOnPaper(0), tally.SavedOnPaper(1)));
    }

    /// <summary>The analysis against another outcome reader, which knows nothing of profiles.</summary>
    [Theory]
    [InlineData("AL092022", 26.64, -81.87)]
    [InlineData("AL102023", 29.67, -83.39)]
    [InlineData("AL172022", 27.2, -80.2)]
    [InlineData("AL282020", 29.95, -90.07)]
    public void Analysis_FirstGale_IsThatOfTheBestTrack(string stormId, double latDeg, double lonDeg)
    {
        var gale = AnalysedStorm.Of(stormId).First(new(latDeg, lonDeg), Wind.GaleKt, Instant.MinValue)!.Value;
        var expected = BestTrack.Gales(stormId, latDeg, lonDeg)[0];
        Assert.True(Math.Abs((gale - expected).TotalMinutes) <= 15, $"{gale}, by the other reader {expected}");
    }

    private static void AssertInTime(ReplayTally tally) =>
        Assert.True(tally.LastEndLate <= MostLate && tally.WorkedLate <= MostLate, $"{tally.LastEndLate:P1} of last ends, {tally.WorkedLate:P1} of work");

    private static List<ReplayedGarden> Play(string folder, int most)
    {
        var advisories = new Inputs().Heard(Path.Combine(Shared.Folder("nhc-tcm"), folder)).Select(heard => heard.Advisory).OfType<CycloneAdvisory>().ToList();
        var came = AnalysedStorm.Of(advisories[0].StormId);
        var books = ConfigFiles.PracticeGardens.Order(StringComparer.Ordinal).Select(file => new Inputs().Garden(file)!).ToList();
        var runs = ReplayPlaces.Of(came, advisories[0].Issued, most).SelectMany(place => books.Select(book => (place, book))).ToList();
        var gardens = new ReplayedGarden[runs.Count];
        Parallel.For(0, runs.Count, i =>
        {
            var ((name, at), book) = runs[i];
            var (jobs, stops) = Replay.Of(MovedGarden.To(book, at) with { Zone = ZoneOf(at) }, advisories, came);
            gardens[i] = new(folder, name, book.Id, jobs, stops);
        });
        return [.. gardens];
    }

    /// <summary>The whole hour of its longitude, so that people's hours stay in the day.</summary>
    private static DateTimeZone ZoneOf(GeoPoint at) => DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(at.LonDeg / 15)));

    private static ReplayedGarden Only(ReplayedGarden garden, WorkClass work) =>
        garden with { Jobs = [.. garden.Jobs.Where(job => job.Job.Class == work)], Stops = [.. garden.Stops.Where(stop => stop.Class == work)] };

    private void WriteLate(ReplayedGarden garden)
    {
        foreach (var job in garden.Jobs.Where(job => job.Planned.Count > 0 && ReplayTally.IsLate(job)))
        {
            output.WriteLine($"late: {garden.Storm} {garden.Place} {garden.Garden} {job.Job.Id} ({job.Job.Class}): limit {job.Limit:MM-dd HH:mm}, last planned to end {job.Planned[^1].End:MM-dd HH:mm}, work ended {job.Work.Ended:MM-dd HH:mm}");
        }
    }
}
