using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

public sealed class GardenFilesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("gardens").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private static string Named(string id) => SampleBook.Good.Replace("id: quay", $"id: {id}");

    [Fact]
    public void Load_MissingFolder_HasNoGardens() => Assert.Empty(GardenFiles.Load(Path.Combine(folder, "none")));

    [Fact]
    public void Load_OneBadFile_RefusesItWholeAndKeepsTheOthers()
    {
        Write("a.yaml", Named("a"));
        Write("b.yaml", Named("b").Replace("count: 3", "count: 0"));
        Write("c.yml", Named("c"));
        Write("notes.md", "no garden");

        var files = GardenFiles.Load(folder);

        Assert.Equal(["a", null, "c"], files.Select(file => file.InForce?.Id));
        Assert.Single(files[1].Read.Faults);
    }

    [Fact]
    public void Load_FileSpoiltLater_LeavesItsLastGoodBookInForce()
    {
        Write("a.yaml", Named("a"));
        var before = GardenFiles.Load(folder);
        Write("a.yaml", "<html>");

        var after = GardenFiles.Load(folder, before);

        Assert.False(after[0].Read.IsGood);
        Assert.Same(before[0].InForce, after[0].InForce);
    }

    [Fact]
    public void Load_TwoFilesWithOneId_RefusesTheSecond()
    {
        Write("a.yaml", Named("same"));
        Write("b.yaml", Named("same"));

        var files = GardenFiles.Load(folder);

        Assert.True(files[0].Read.IsGood);
        Assert.Contains("used by a.yaml too", Assert.Single(files[1].Read.Faults).Reason);
        Assert.Null(files[1].InForce);
    }

    [Fact]
    public void Read_NotUtf8_NamesTheLine()
    {
        var path = Write("a.yaml", "");
        File.WriteAllBytes(path, [.. "garden:\n  name: Caf"u8, 0xE9, .. "\n"u8]);

        var fault = Assert.Single(GardenFiles.Read(path).Faults);

        Assert.Equal(2, fault.Line);
        Assert.Contains("not UTF-8", fault.Reason);
    }

    [Fact]
    public void Read_FolderOrNothingInPlaceOfAFile_IsAFault()
    {
        Assert.Contains("cannot be read", Assert.Single(GardenFiles.Read(folder).Faults).Reason);
        Assert.Contains("cannot be read", Assert.Single(GardenFiles.Read(Path.Combine(folder, "none.yaml")).Faults).Reason);
    }
}
