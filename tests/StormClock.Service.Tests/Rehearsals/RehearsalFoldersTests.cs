using StormClock.Service.Rehearsal;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Rehearsals;

/// <summary>A rehearsal replaces what an earlier one wrote, and nobody else's letters or logs.</summary>
public sealed class RehearsalFoldersTests : IDisposable
{
    private const string Letter = "20270919T090000Z-329dd8e72254367fa2483a060e80cf38.eml";
    private const string Line = "2027-09-19 Sun 05:00  advisory  heard NINETY advisory 1";

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("", "", null)]
    [InlineData(Letter, Line, null)]
    [InlineData("notes.txt", "", null)]
    [InlineData("from-a-friend.eml", Line, "from-a-friend.eml")]
    [InlineData(Letter, "", Letter)]
    [InlineData("", "bought twine today", "log.txt")]
    public void Foreign_Folder_NamesWhatIsNotOfARehearsal(string file, string log, string? foreign)
    {
        if (file.Length > 0) File.WriteAllText(folder.File(file), "x");
        if (log.Length > 0) File.WriteAllText(folder.File("log.txt"), log + "\n");
        Assert.Equal(foreign, Path.GetFileName(RehearsalFolders.Foreign(folder.Path)));
    }

    [Fact]
    public void Foreign_NoSuchFolder_IsNone() => Assert.Null(RehearsalFolders.Foreign(folder.File("later")));
}
