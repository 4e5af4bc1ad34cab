using System.Text.Json;
using CsCheck;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books;

public sealed class GardenWriterTests
{
    private static GardenBook Read(string text) => Read(text, ItemKinds.All);

    private static GardenBook Read(string text, IReadOnlyDictionary<string, ItemKind> kinds)
    {
        var read = GardenReader.Read(text, "written.yaml", null, kinds);
        Assert.True(read.IsGood, string.Join("\n", read.Faults) + "\n" + text);
        return read.Value!;
    }

    /// <summary>All of a book as text, so that lists compare by what they hold.</summary>
    private static string Whole(GardenBook book) => book.Zone.Id + JsonSerializer.Serialize(book with { Zone = DateTimeZone.Utc });

    [Fact]
    public void Write_PracticeGardens_ReadBackTheSame()
    {
        foreach (var path in ConfigFiles.PracticeGardens)
        {
            var book = Read(File.ReadAllText(path));
            Assert.Equal(Whole(book), Whole(Read(GardenWriter.Write(book))));
        }
    }

    [Fact]
    public void Write_ChangedBook_IsNoLongerTheSame()
    {
        var book = Read(SampleBook.Good);

        Assert.NotEqual(Whole(book), Whole(Read(GardenWriter.Write(book with { Items = [book.Items[0], book.Items[1] with { Count = 41 }] }))));
    }

    /// <summary>
    /// Whatever a page's form may bring: what was written is written again, what was left out stays out, and the book that was
    /// read from it is the same when it goes round once more.
    /// </summary>
    [Fact]
    public void Write_AnyBook_ReadsBackTheSame()
    {
        MadeBooks.Book(Read(SampleBook.Good)).Sample(
            given =>
            {
                var text = GardenWriter.Write(given);
                var book = Read(text, MadeKinds.Rich);
                Assert.Equal(Places(given), Places(book));
                Assert.Equal(Written(given.Items[0]), Written(book.Items[0]));
                Assert.Equal(text, GardenWriter.Write(book));
                Assert.Equal(Whole(book), Whole(Read(GardenWriter.Write(book), MadeKinds.Rich)));
            },
            iter: 2000);
    }

    private static string Places(GardenBook book) => Whole(book with { Items = [] });

    /// <summary>What the gardener wrote of an item, apart from what is typical.</summary>
    private static string Written(Item item) => JsonSerializer.Serialize(new
    {
        item.Name, item.Kind, item.Count, item.Endangers, item.Written, item.Spot, item.ValueTypical, Value = item.ValueTypical ? 0 : item.ValueUsd,
        Harvest = item.Harvest is { ValueTypical: true } harvest ? harvest with { ValueUsd = 0 } : item.Harvest,
        item.JobsTypical,
        Jobs = item.JobsTypical ? [] : item.Jobs.Select(Written),
    });

    private static object Written(Job job)
    {
        T? Stated<T>(JobParts part, T value) => job.LeftOut.HasFlag(part) ? default : value;
        var caution = job.LeftOut.HasFlag(JobParts.Caution) || job.Caution is null;
        var part = job.LeftOut.HasFlag(JobParts.PartKg) || job.PartKg is null;
        return new
        {
            job.Kind, LeftOut = job.LeftOut | (caution ? JobParts.Caution : 0) | (part ? JobParts.PartKg : 0), PartKg = part ? null : job.PartKg, job.ValueStated, Value = job.ValueStated ? job.Value : 0, job.Fallback,
            Minutes = Stated(JobParts.Minutes, job.Minutes), People = Stated(JobParts.People, job.People), Class = Stated(JobParts.Class, job.Class),
            Materials = Stated(JobParts.Materials, job.Materials), Caution = caution ? null : job.Caution, Undo = Stated(JobParts.Undo, job.Undo),
            LastRound = Stated(JobParts.LastRound, job.LastRound),
        };
    }

    /// <summary>A book kept from before knows what a later catalogue knows, where the gardener wrote nothing.</summary>
    [Fact]
    public void Write_LittleWritten_LetsABetterCatalogueHelp()
    {
        var text = GardenWriter.Write(Read(MadeKinds.Book("kind: drum\ncount: 3\nheight: 1.1"), MadeKinds.Bare));

        var item = Read(text, MadeKinds.Rich).Items[0];

        Assert.Equal((1.1, 9.0, 90.0, 2), (item.Build.HeightM, item.MassKg, item.ValueUsd, item.Jobs.Count));
    }

    [Fact]
    public void Write_NothingToBeDone_StaysSo()
    {
        var text = GardenWriter.Write(Read(MadeKinds.Book("kind: drum\ncount: 3\njobs: none"), MadeKinds.Bare));

        Assert.Empty(Read(text, MadeKinds.Rich).Items[0].Jobs);
    }
}
