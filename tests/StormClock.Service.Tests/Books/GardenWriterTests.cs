using System.Text.Json;
using CsCheck;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books;

public sealed class GardenWriterTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("gardens").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static GardenBook Read(string text)
    {
        var read = GardenReader.Read(text, "written.yaml");
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

    /// <summary>Odd names and numbers that a page's form may bring.</summary>
    [Fact]
    public void Write_AnyTextAndNumber_ReadsBackTheSame()
    {
        var good = Read(SampleBook.Good);
        var name = Gen.String[Gen.Char["ab \"'\\:#{}[],&*!|>%@`-?~é≈"], 1, 20].Where(text => text.Trim().Length > 0).Select(text => text.Trim());
        Gen.Select(name, name, Gen.Double[0, 20_000], Gen.Double[0, 1]).Sample(
            (itemName, fallback, mass, small) =>
            {
                var item = good.Items[0];
                var jobs = item.Jobs.Select(job => job with { Fallback = fallback, StoreFloorM2 = job.StoreId is null ? 0 : small }).ToList();
                var book = good with { Name = fallback, Items = [item with { Name = itemName, Written = item.Written with { MassKg = mass }, Build = item.Build with { MassKg = mass }, Jobs = jobs }, good.Items[1]] };
                Assert.Equal(Whole(book), Whole(Read(GardenWriter.Write(book))));
            },
            iter: 500);
    }

    [Fact]
    public void Save_OverAnOldFile_KeepsTheOldOneBesideIt()
    {
        var path = Path.Combine(folder, "quay.yaml");
        File.WriteAllText(path, "# my own remark\n" + SampleBook.Good);
        var book = Read(SampleBook.Good) with { Name = "New name" };

        Assert.True(GardenFiles.Save(path, book).IsGood);

        Assert.Equal("New name", GardenFiles.Read(path).Value!.Name);
        Assert.StartsWith("# my own remark", File.ReadAllText(path + ".bak"));
        Assert.Equal(["quay"], GardenFiles.Load(folder).Select(file => file.InForce!.Id));
        Assert.False(File.Exists(path + ".new"));
    }

    [Fact]
    public void Save_FirstTime_WritesTheFile()
    {
        var path = Path.Combine(folder, "quay.yaml");

        GardenFiles.Save(path, Read(SampleBook.Good));

        Assert.Equal("quay", GardenFiles.Read(path).Value!.Id);
    }

    [Fact]
    public void Save_BookThatCouldNotBeRead_LeavesTheFileAlone()
    {
        var path = Path.Combine(folder, "quay.yaml");
        File.WriteAllText(path, SampleBook.Good);
        var book = Read(SampleBook.Good);

        var saved = GardenFiles.Save(path, book with { Items = [book.Items[0] with { AreaId = "moon" }] });

        Assert.False(saved.IsGood);
        Assert.Equal(SampleBook.Good, File.ReadAllText(path));
    }
}
