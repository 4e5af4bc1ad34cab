using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;

namespace StormClock.Service.Tests.Books.Edits;

public sealed class BookEditorTests : IDisposable
{
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 22, 12, 0, 5);

    private readonly string folder = Directory.CreateTempSubdirectory("edits").FullName;
    private readonly string path;

    public BookEditorTests()
    {
        path = Path.Combine(folder, "quay.yaml");
        File.WriteAllText(path, BookTextTests.Block);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string[] Files => [.. Directory.GetFiles(folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    private static BookOutcome<Item> Count(GardenBook book, int count) => BookChange.Put(book, book.Items[0] with { Count = count }, EntryMark.Of(book.Items[0]));

    private static BookOutcome<Item> Add(GardenBook book, string id) => BookChange.Put(book, book.Items[0] with { Id = id }, null);

    private static BookSave<T>.Saved Saved<T>(BookSave<T> save)
        where T : class => Assert.IsType<BookSave<T>.Saved>(save);

    [Fact]
    public void Save_OneChange_ChangesItsLineInTheFileAndLeavesNothingBesideIt()
    {
        var saved = Saved(BookEditor.Save(path, book => Count(book, 5), Now));

        Assert.Equal(BookTextTests.Block.Replace("count: 3 #", "count: 5 #"), File.ReadAllText(path));
        Assert.Equal((5, null), (saved.Rewrite.Book.Items[0].Count, saved.OldFile));
        Assert.Equal(["quay.yaml"], Files);
    }

    [Fact]
    public void Save_NothingChanged_LeavesTheFileUntouched()
    {
        File.SetAttributes(path, FileAttributes.ReadOnly);
        File.SetLastWriteTimeUtc(path, new DateTime(2027, 1, 1, 0, 0, 0, DateTimeKind.Utc));

        Saved(BookEditor.Save(path, book => Count(book, 3), Now));

        Assert.Equal(new DateTime(2027, 1, 1, 0, 0, 0, DateTimeKind.Utc), File.GetLastWriteTimeUtc(path));
        File.SetAttributes(path, FileAttributes.Normal);
    }

    /// <summary>The bytes and not only the words: a byte order mark and the ends of lines too.</summary>
    [Fact]
    public void Save_WholeFileWrittenAnew_KeepsTheOldOneBesideItUnderANameOfItsOwn()
    {
        var old = "\uFEFF" + BookTextTests.Block.Replace("\n", "\r\n");
        File.WriteAllText(path, old);
        File.WriteAllText(path + ".20270922T120005Z.bak", "from before");

        var saved = Saved(BookEditor.Save(path, book => new BookOutcome<Item>.Changed(book with { Items = [book.Items[1], book.Items[0]] }), Now));

        Assert.IsType<BookRewrite.Whole>(saved.Rewrite);
        Assert.Equal(["quay.yaml", "quay.yaml.20270922T120005Z-2.bak", "quay.yaml.20270922T120005Z.bak"], Files);
        Assert.Equal(Path.Combine(folder, "quay.yaml.20270922T120005Z-2.bak"), saved.OldFile);
        Assert.Equal("from before", File.ReadAllText(path + ".20270922T120005Z.bak"));
        Assert.Equal(System.Text.Encoding.UTF8.GetBytes(old), File.ReadAllBytes(saved.OldFile!));
        Assert.Equal(["quay"], GardenFiles.Load(folder).Select(file => file.InForce!.Id));
    }

    [Fact]
    public void Save_RemarkGoesWithAnEntry_KeepsTheOldFile()
    {
        var saved = Saved(BookEditor.Save(path, book => BookChange.RemoveItem(book, "figs", EntryMark.Of(book.Items[0])), Now));

        Assert.IsType<BookRewrite.Kept>(saved.Rewrite);
        Assert.DoesNotContain("one is poorly", File.ReadAllText(path));
        Assert.Contains("one is poorly", File.ReadAllText(saved.OldFile!));
    }

    /// <summary>Somebody saves in an editor between our reading and our writing: both changes are in the file.</summary>
    [Fact]
    public void Save_EditedByHandMeanwhile_KeepsBoth()
    {
        var calls = 0;

        Saved(BookEditor.Save(path, book =>
        {
            if (calls++ == 0) File.WriteAllText(path, "# by hand\n" + File.ReadAllText(path).Replace("count: 40", "count: 41"));
            return Count(book, 5);
        }, Now));

        Assert.Equal(2, calls);
        Assert.Equal("# by hand\n" + BookTextTests.Block.Replace("count: 40", "count: 41").Replace("count: 3 #", "count: 5 #"), File.ReadAllText(path));
        Assert.Equal(["quay.yaml"], Files);
    }

    /// <summary>The same entry was changed by hand after the page was made: the page is told, the file stays as the hand left it.</summary>
    [Fact]
    public void Save_SameEntryEditedByHand_IsAConflict()
    {
        var had = GardenFiles.Read(path).Value!.Items[0];
        var byHand = BookTextTests.Block.Replace("count: 3 #", "count: 8 #");
        File.WriteAllText(path, byHand);

        var conflict = Assert.IsType<BookSave<Item>.Conflict>(BookEditor.Save(path, book => BookChange.Put(book, had with { Count = 5 }, EntryMark.Of(had)), Now));

        Assert.Equal(8, conflict.Now!.Count);
        Assert.Equal(byHand, File.ReadAllText(path));
    }

    [Fact]
    public void Save_FileThatNeverRests_GivesUpAndLeavesItToTheOther()
    {
        var calls = 0;

        var refused = Assert.IsType<BookSave<Item>.Refused>(BookEditor.Save(path, book =>
        {
            File.WriteAllText(path, $"# {++calls}\n{BookTextTests.Block}");
            return BookChange.RemoveItem(book, "figs", EntryMark.Of(book.Items[0]));
        }, Now));

        Assert.Contains("written by another program all the time", Assert.Single(refused.Faults).Reason);
        Assert.Equal($"# {calls}\n{BookTextTests.Block}", File.ReadAllText(path));
        Assert.Equal(["quay.yaml"], Files);
    }

    [Fact]
    public void Save_TableChangedMeanwhile_IsReadAgain()
    {
        var table = Path.Combine(folder, "plants.csv");
        File.WriteAllText(table, "id,kind,area,count\nmats,sheet,porch,5\n");
        File.WriteAllText(path, BookTextTests.Block.Replace("items:", "items_file: plants.csv\nitems:"));
        var calls = 0;

        Saved(BookEditor.Save(path, book =>
        {
            if (calls++ == 0) File.WriteAllText(table, "id,kind,area,count\nmats,sheet,porch,5\npots,potted_plant,porch,4\n");
            return new BookOutcome<Item>.Changed(book with { Items = [.. book.Items.Select(item => item.Id == "mats" ? item with { Count = 6 } : item)] });
        }, Now));

        Assert.Equal(["figs", "beans", "mats", "pots"], GardenFiles.Read(path).Value!.Items.Select(item => item.Id));
    }

    [Theory]
    [InlineData("    count: 40", "    count: 0", "count")]
    [InlineData("    count: 40", "\tcount: 40", "a tab is used for indentation")]
    [InlineData("  - id: beans", "  - &b id: beans", "anchor")]
    public void Save_FileThatCannotBeRead_GivesItsFaultsAndLeavesItAlone(string good, string bad, string reason)
    {
        var spoilt = BookTextTests.Block.Replace(good, bad);
        File.WriteAllText(path, spoilt);

        var broken = Assert.IsType<BookSave<Item>.Broken>(BookEditor.Save(path, book => Count(book, 5), Now));

        Assert.Contains(broken.Faults, fault => fault.Reason.Contains(reason, StringComparison.Ordinal) && fault.Line == Array.FindIndex(spoilt.Split('\n'), line => line.StartsWith(bad, StringComparison.Ordinal)) + 1);
        Assert.Equal(spoilt, File.ReadAllText(path));
        Assert.Equal(["quay.yaml"], Files);
    }

    [Fact]
    public void Save_NoSuchFile_IsToldAndNotMade()
    {
        File.Delete(path);

        Assert.Contains("no such file", Assert.Single(Assert.IsType<BookSave<Item>.Broken>(BookEditor.Save(path, book => Count(book, 5), Now)).Faults).Reason);
        Assert.Empty(Files);
    }

    [Fact]
    public void Save_BookThatCouldNotBeRead_LeavesTheFileAlone()
    {
        var refused = Assert.IsType<BookSave<Item>.Refused>(BookEditor.Save(path, book => BookChange.Put(book, book.Items[0] with { AreaId = "moon" }, EntryMark.Of(book.Items[0])), Now));

        Assert.Contains("'moon'", Assert.Single(refused.Faults).Reason);
        Assert.Equal(BookTextTests.Block, File.ReadAllText(path));
        Assert.Equal(["quay.yaml"], Files);
    }

    /// <summary>What a process that died in the middle leaves behind: the old file whole, and half of a new one beside it.</summary>
    [Fact]
    public void Save_AfterACrash_TakesNoNoticeOfWhatWasBegun()
    {
        File.WriteAllText(path + ".new", BookTextTests.Block[..200]);
        Assert.Equal(["quay"], GardenFiles.Load(folder).Select(file => file.InForce!.Id));

        Saved(BookEditor.Save(path, book => Count(book, 5), Now));

        Assert.Equal(5, GardenFiles.Read(path).Value!.Items[0].Count);
        Assert.Equal(["quay.yaml"], Files);
    }

    /// <summary>Whoever looks in at any moment, as after a crash at that moment, finds the old book or the new one whole.</summary>
    [Fact]
    public async Task Save_AtAnyMoment_OldOrNewFileIsThereWhole()
    {
        const int saves = 60;
        var (done, seen) = (false, 0);
        var looking = Task.Run(() =>
        {
            var last = 3;
            while (!Volatile.Read(ref done))
            {
                var read = GardenFiles.Read(path);
                Assert.True(read.IsGood, string.Join("\n", read.Faults));
                Assert.InRange(read.Value!.Items[0].Count, last, saves + 3);
                last = read.Value.Items[0].Count;
                seen++;
            }
        }, TestContext.Current.CancellationToken);

        for (var more = 1; more <= saves; more++)
        {
            if (looking.IsCompleted) break;
            Saved(BookEditor.Save(path, book => Count(book, book.Items[0].Count + 1), Now));
        }

        Volatile.Write(ref done, true);
        await looking;
        Assert.Equal(saves + 3, GardenFiles.Read(path).Value!.Items[0].Count);
        Assert.True(seen > 0);
    }

    [Fact]
    public void Save_ManyAtOnce_LosesNone()
    {
        Parallel.For(0, 16, number => Saved(BookEditor.Save(path, book => Add(book, $"pot-{number % 4}"), Now)));

        var ids = GardenFiles.Read(path).Value!.Items.Select(item => item.Id).ToList();
        Assert.Equal(18, ids.Distinct().Count());
        Assert.Equal(4, ids.Count(id => id is "pot-0" or "pot-0-2" or "pot-0-3" or "pot-0-4"));
        Assert.Contains("# one is poorly", File.ReadAllText(path));
    }

    [Fact]
    public void Save_FileThatCannotBeWritten_IsToldAndLeavesItAlone()
    {
        Directory.CreateDirectory(path + ".new");

        var refused = Assert.IsType<BookSave<Item>.Refused>(BookEditor.Save(path, book => Count(book, 5), Now));

        Assert.Contains("quay.yaml cannot be written; check that", Assert.Single(refused.Faults).Reason);
        Assert.Equal(BookTextTests.Block, File.ReadAllText(path));
    }

    [Fact]
    public void Save_LinkToAFileForItsOwnerOnly_StaysBoth()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("needs a system with file modes and free use of links");
            return;
        }

        var link = Path.Combine(folder, "linked.yaml");
        File.CreateSymbolicLink(link, path);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);

        var saved = Saved(BookEditor.Save(link, book => BookChange.RemoveItem(book, "figs", EntryMark.Of(book.Items[0])), Now));

        Assert.Equal(path, new FileInfo(link).LinkTarget);
        Assert.Single(GardenFiles.Read(path).Value!.Items);
        foreach (var file in (string[])[path, saved.OldFile!]) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    private static GardenBook Pier => SampleBook.Read(SampleBook.Good.Replace("id: quay", "id: pier"));

    [Fact]
    public void Create_NewFile_WritesTheBook()
    {
        var fresh = Path.Combine(folder, "pier.yaml");

        Assert.Equal("pier", BookEditor.Create(fresh, Pier).Value!.Id);

        Assert.Equal(GardenWriter.Write(Pier), File.ReadAllText(fresh));
        Assert.Equal(["pier.yaml", "quay.yaml"], Files);
    }

    [Fact]
    public void Create_FileThatIsThere_IsRefusedAndLeftAlone()
    {
        Assert.Contains("quay.yaml is there already", Assert.Single(BookEditor.Create(path, Pier).Faults).Reason);

        Assert.Equal(BookTextTests.Block, File.ReadAllText(path));
        Assert.Equal(["quay.yaml"], Files);
    }

    [Fact]
    public void Create_WhatCannotBe_IsRefusedWithTheReason()
    {
        var fresh = Path.Combine(folder, "pier.yaml");

        Assert.Contains("which quay.yaml has", Assert.Single(BookEditor.Create(fresh, Pier with { Id = "quay" }).Faults).Reason);
        Assert.Contains("'people'", Assert.Single(BookEditor.Create(fresh, Pier with { People = [] }).Faults).Reason);
        Assert.Contains("cannot be written", Assert.Single(BookEditor.Create(Path.Combine(folder, "none", "pier.yaml"), Pier).Faults).Reason);
        Assert.Equal(["quay.yaml"], Files);
    }
}
