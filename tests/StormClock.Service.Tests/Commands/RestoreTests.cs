using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Service.Books;
using StormClock.Service.Commands.Restoring;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Tests.Visits;
using StormClock.Service.Visits;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Commands;

public sealed class RestoreTests : IDisposable
{
    private readonly TempFolder folder = new();

    private string Zip => folder.File("backup.zip");

    private string Config => folder.File("box/config");

    private string Data => folder.File("box/data");

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    /// <summary>The whole way: taken over HTTP from a service that runs, put into empty folders.</summary>
    [Fact]
    public async Task Restore_BackupOfARunningService_BringsTheSameBookOutcomesAnswersAndKeys()
    {
        var gardens = Directory.CreateDirectory(folder.File("first/gardens")).FullName;
        var text = await File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), Cancellation);
        await File.WriteAllTextAsync(Path.Combine(gardens, "tern-hook.yaml"), text.Replace("practice: true", "practice: false", StringComparison.Ordinal), Cancellation);
        await File.WriteAllTextAsync(folder.File("first/stormclock.yaml"), $"data_folder: {Data}\n", Cancellation);
        var state = new JobState("porch/tie", JobProgress.Done, Instant.FromUtc(2027, 9, 20, 10, 0), "Amos");
        await using var host = await GardenHost.StartAsync(passcode: true, shelf: new GardenShelf(gardens), config: folder.File("first"));
        using var keeper = await host.EnterByPasscodeAsync();
        await host.Service.Store.WriteAsync(transaction =>
        {
            JobStates.Put(transaction, "tern-hook", "e1", state);
            Outcomes.Put(transaction, "tern-hook", "e1", new Outcome("satsuma-halves", OutcomeKind.Damaged, host.Service.Now, "Amos", "a branch", [], null));
        }, Cancellation);
        var outcomes = OutcomesIn(host.Service.Store);
        Assert.Single(outcomes);
        var letters = host.Service.Outbox("tern-hook").Select(entry => entry.Id).Order().ToList();
        await File.WriteAllBytesAsync(Zip, await keeper.GetByteArrayAsync("keeper/backup.zip", Cancellation), Cancellation);

        var restored = await CommandRun.RunAsync("restore", Zip, "--config", Config);

        Assert.Equal((0, ""), (restored.Exit, restored.Errors));
        Assert.Contains($"restored: {Data}", restored.Output, StringComparison.Ordinal);
        Assert.Contains("Tern Hook", restored.Output, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllBytesAsync(Path.Combine(gardens, "tern-hook.yaml"), Cancellation), await File.ReadAllBytesAsync(Path.Combine(Config, "gardens", "tern-hook.yaml"), Cancellation));
        foreach (var name in new[] { "link-keys", PasscodeFile.Name }) Assert.Equal(await File.ReadAllBytesAsync(host.Data.File(name), Cancellation), await File.ReadAllBytesAsync(Path.Combine(Data, name), Cancellation));
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(Data, "link-keys")));
        Assert.Equal(["config", "data"], Names(folder.File("box")));

        using var store = StormStore.Open(Data);
        Assert.Equal(outcomes, OutcomesIn(store));
        Assert.Equal([state], store.Read(reader => JobStates.OfEpisode(reader, "tern-hook", "e1")));
        Assert.Equal(letters, store.Read(reader => OutboxTable.OfGarden(reader, "tern-hook")).Select(entry => entry.Id).Order());
    }

    [Fact]
    public async Task Restore_OverAnotherBox_KeepsAllOfItBesideAndCarriesTheMailPassword()
    {
        OldBox();
        File.WriteAllText(Path.Combine(Data, "mail-password"), "hush");
        MakeZip();
        var restored = await RunAsync();
        Assert.Equal((0, ""), (restored.Exit, restored.Errors));
        Assert.True(File.Exists(Path.Combine(Data, "stormclock.db")) && File.Exists(Path.Combine(Config, "gardens", "quay.yaml")));
        Assert.False(File.Exists(Path.Combine(Config, "own.txt")) || File.Exists(Path.Combine(Data, "own.txt")));
        AssertOldIsWhole();
        Assert.Equal("hush", File.ReadAllText(Path.Combine(Data, "mail-password")));
        Assert.Contains("carried over", restored.Output, StringComparison.Ordinal);
        foreach (var place in new[] { Config, Data })
        {
            var kept = Assert.Single(Directory.GetDirectories(folder.File("box"), Path.GetFileName(place) + ".before-*"));
            Assert.Matches(@"\.before-\d{8}T\d{6}Z$", kept);
            Assert.Contains($"what was there is kept: {kept}", restored.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Restore_OfARehearsalWithoutConfig_LeavesTheConfigFolder()
    {
        OldBox();
        MakeZip(zip => Take(zip, "config/"));
        Assert.Equal(0, (await RunAsync()).Exit);
        Assert.True(File.Exists(Path.Combine(Config, "own.txt")));
        Assert.True(File.Exists(Path.Combine(Data, "stormclock.db")));
    }

    [Fact]
    public async Task Restore_WhileAServiceHoldsTheData_IsRefused()
    {
        OldBox();
        MakeZip();
        using (StoreLock.Take(Data))
        {
            var before = Listing();
            var refused = await RunAsync();
            Assert.Equal((3, ""), (refused.Exit, refused.Output));
            Assert.StartsWith("another StormClock uses this data folder", Assert.Single(refused.ErrorLines), StringComparison.Ordinal);
            Assert.Equal(before, Listing());
        }

        Assert.Equal(0, (await RunAsync()).Exit);
    }

    public static TheoryData<string, string> BadArchives => new()
    {
        { "../out.txt", "a path that no backup has" },
        { "data/../../out.txt", "a path that no backup has" },
        { "/out.txt", "a path that no backup has" },
        { "config//gardens/a.yaml", "a path that no backup has" },
        { "config/..\\out.txt", "a path that no backup has" },
        { "C:/out.txt", OperatingSystem.IsWindows() ? "a path that no backup has" : "a file that no backup has" },
        { "config/a\u0007.yaml", "a path that no backup has" },
        { "config/gardens/", "a path that no backup has" },
        { "config/" + new string('a', 500), "a path that no backup has" },
        { "readme.txt", "a file that no backup has" },
        { "data/stormclock.lock", "a file that no backup has" },
        { "data/photos", "a file that no backup has" },
        { "data/other/a.txt", "a file that no backup has" },
        { "data/LINK-KEYS", "twice" },
    };

    [Theory, MemberData(nameof(BadArchives))]
    public Task Restore_EntryThatNoBackupHas_IsRefusedAndNothingTouched(string name, string told) => RefusedAsync(told, () => MakeZip(zip => Put(zip, name, "x")));

    [Fact]
    public Task Restore_Link_IsRefused() => RefusedAsync("no plain file", () => MakeZip(zip => Put(zip, "config/gardens/link.yaml", "/etc/passwd").ExternalAttributes = unchecked((int)(0xA1FFu << 16))));

    [Fact]
    public Task Restore_TwoOfOneName_IsRefused() => RefusedAsync("twice", () => MakeZip(zip => Put(zip, "data/link-keys", "x")));

    /// <summary>A megabyte of blanks packs to a kilobyte.</summary>
    [Fact]
    public Task Restore_MoreThanItMayHave_IsRefused() => RefusedAsync("more than the 65536", () => MakeZip(zip => Put(zip, "data/passcode", new string(' ', 1 << 20))));

    /// <summary>The archive says that a file is small, and it is not.</summary>
    [Fact]
    public Task Restore_LengthThatLies_IsRefused() => RefusedAsync("is damaged", () =>
    {
        MakeZip(zip => Put(zip, "data/passcode", new string(' ', 1 << 20)));
        Spoil("data/passcode", (bytes, header) => BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(header + 24), 100));
    });

    [Fact]
    public Task Restore_ByteThatChanged_IsRefused() => RefusedAsync("is damaged", () =>
    {
        MakeZip(zip => Put(zip, "data/passcode", "kept as it is, word by word", CompressionLevel.NoCompression));
        var bytes = File.ReadAllBytes(Zip);
        bytes[bytes.AsSpan().IndexOf("word by word"u8)] = (byte)'W';
        File.WriteAllBytes(Zip, bytes);
    });

    [Fact]
    public Task Restore_PartOfAnArchive_IsRefused() => RefusedAsync("no archive that can be read", () =>
    {
        MakeZip();
        var bytes = File.ReadAllBytes(Zip);
        File.WriteAllBytes(Zip, bytes[..(bytes.Length / 2)]);
    });

    [Fact]
    public Task Restore_NoArchive_IsRefused() => RefusedAsync("no archive that can be read", () => File.WriteAllText(Zip, "a letter"));

    [Fact]
    public Task Restore_WithoutTheDatabase_IsRefused() => RefusedAsync("holds no data/stormclock.db", () => MakeZip(zip => Take(zip, "data/stormclock.db")));

    [Theory]
    [InlineData("config/gardens/quay.yaml", "garden: {id: quay", "config/gardens/quay.yaml:")]
    [InlineData("config/stormclock.yaml", "pages: {listen: nowhere}", "config/stormclock.yaml:")]
    [InlineData("data/link-keys", "short\n", "data/link-keys:")]
    [InlineData("data/stormclock.db", "no database, but long enough to look like one", "data/stormclock.db:")]
    public Task Restore_WhatTheServiceCouldNotRead_IsRefused(string name, string content, string told) => RefusedAsync(told, () => MakeZip(zip =>
    {
        Take(zip, name);
        Put(zip, name, content);
    }));

    /// <summary>The engine would begin an empty database in its place, and nobody would notice what is gone.</summary>
    [Fact]
    public Task Restore_DatabaseThatNobodyHasRunOn_IsRefused() => RefusedAsync("no database that StormClock has run on", () =>
    {
        StormStore.Open(folder.File("empty")).Dispose();
        MakeZip(zip =>
        {
            Take(zip, "data/stormclock.db");
            zip.CreateEntryFromFile(folder.File("empty/stormclock.db"), "data/stormclock.db");
        });
    });

    /// <summary>Every page of the database spoilt in turn, and none of it ends the command otherwise than by its exit code.</summary>
    [Fact]
    public async Task Restore_DatabaseSpoiltAnywhere_IsRefusedOrGoodButNeverThrows()
    {
        OldBox();
        var whole = MakeDatabase();
        for (var at = 0; at < whole.Length; at += 8192)
        {
            var spoilt = (byte[])whole.Clone();
            spoilt.AsSpan(at, Math.Min(512, spoilt.Length - at)).Fill(0xA5);
            MakeZip(zip =>
            {
                Take(zip, "data/stormclock.db");
                using var into = zip.CreateEntry("data/stormclock.db").Open();
                into.Write(spoilt);
            });
            var run = await RunAsync();
            Assert.True(run.Exit is 0 or 1, $"{at}: {run.Exit} {run.Errors}");
            AssertOldIsWhole();
        }
    }

    /// <summary>Bytes all over the archive turned: whatever that makes of it, it is refused, or what is told to be there is there, whole.</summary>
    [Fact]
    public async Task Restore_ArchiveSpoiltAnywhere_IsRefusedOrWholeButNeverThrows()
    {
        OldBox();
        MakeZip();
        var whole = File.ReadAllBytes(Zip);
        for (var at = 0; at < whole.Length; at += Math.Max(1, whole.Length / 150))
        {
            var spoilt = (byte[])whole.Clone();
            spoilt[at] ^= 0xFF;
            File.WriteAllBytes(Zip, spoilt);
            var run = await RunAsync();
            Assert.True(run.Exit is 0 or 1, $"{at}: {run.Exit} {run.Errors}");

            // Names have no checksum in an archive: one that was spoilt goes elsewhere, and then no word claims the garden, or the settings.
            if (run.Exit == 0) Assert.Equal(HasGarden(), run.Output.Contains("gardens: Quay garden;", StringComparison.Ordinal));
            if (run.Exit == 0) Assert.NotEqual(File.Exists(Path.Combine(Config, "stormclock.yaml")), run.Output.Contains("holds no settings", StringComparison.Ordinal));
            AssertOldIsWhole();
        }
    }

    [Fact]
    public async Task Restore_FoldersWithinEachOther_IsRefused()
    {
        MakeZip();
        var refused = await CommandRun.RunAsync("restore", Zip, "--config", Config, "--data", Path.Combine(Config, "data"));
        Assert.Equal(1, refused.Exit);
        Assert.Contains("lie within each other", refused.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Config));
    }

    /// <summary>Between any two of its steps the program is gone: what was there is whole under one name or the other, and doing it again ends well.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public async Task Restore_KilledAfterAnyStep_LosesNothingAndCanBeDoneAgain(int steps)
    {
        OldBox();
        MakeZip();
        FolderSwap[] swaps = [FolderSwap.At(Config, "20270901T060000Z"), FolderSwap.At(Data, "20270901T060000Z")];
        foreach (var swap in swaps) File.WriteAllText(Path.Combine(Directory.CreateDirectory(swap.Fresh).FullName, "fresh.txt"), "fresh");
        var all = swaps.SelectMany(swap => swap.Steps).ToList();
        Assert.Equal(4, all.Count);
        foreach (var (from, to) in all.Take(steps)) FolderSwap.Rename(from, to);
        AssertOldIsWhole();

        var again = await RunAsync();

        Assert.Equal((0, ""), (again.Exit, again.Errors));
        Assert.Equal(steps < 4, again.Output.Contains("A restore was broken off here before", StringComparison.Ordinal));
        Assert.True(File.Exists(Path.Combine(Data, "stormclock.db")) && File.Exists(Path.Combine(Config, "gardens", "quay.yaml")));
        AssertOldIsWhole();
    }

    [Fact]
    public void Do_StepThatTheSystemRefuses_PutsAllBack()
    {
        OldBox();
        FolderSwap[] swaps = [FolderSwap.At(Config, "20270901T060000Z"), FolderSwap.At(Data, "20270901T060000Z")];
        Directory.CreateDirectory(swaps[0].Fresh);
        Assert.ThrowsAny<IOException>(() => FolderSwap.Do(swaps));
        Assert.True(File.Exists(Path.Combine(Config, "own.txt")) && File.Exists(Path.Combine(Data, "own.txt")));
    }

    private static List<(string, string, OutcomeKind, Instant, string, string)> OutcomesIn(StormStore store) => store.Read(reader =>
        Outcomes.OfGarden(reader, "tern-hook").Select(found => (found.EpisodeId, found.Outcome.ItemId, found.Outcome.Kind, found.Outcome.At, found.Outcome.By, found.Outcome.Note)).ToList());

    private Task<CommandResult> RunAsync() => CommandRun.RunAsync("restore", Zip, "--config", Config, "--data", Data);

    private async Task RefusedAsync(string told, Action make)
    {
        OldBox();
        make();
        var before = Listing();
        var refused = await RunAsync();
        Assert.Equal((1, ""), (refused.Exit, refused.Output));
        Assert.Contains(told, refused.Errors, StringComparison.Ordinal);
        Assert.EndsWith("Nothing was changed.", refused.ErrorLines[^1], StringComparison.Ordinal);
        Assert.Equal(before, Listing());
    }

    /// <summary>Whole, under whatever name the archive gave it: one byte of the name changed may leave it a book.</summary>
    private bool HasGarden() => Path.Combine(Config, "gardens") is var folder && Directory.Exists(folder)
        && Directory.GetFiles(folder).Any(path => Path.GetExtension(path) is ".yaml" or ".yml" && File.ReadAllText(path) == SampleBook.Good);

    private void OldBox()
    {
        foreach (var place in new[] { Config, Data }) File.WriteAllText(Path.Combine(Directory.CreateDirectory(place).FullName, "own.txt"), $"own of {Path.GetFileName(place)}");
        StoreLock.Take(Data).Dispose();
    }

    private void AssertOldIsWhole() => Assert.All([Config, Data], place =>
    {
        var name = Path.GetFileName(place);
        var holders = Directory.GetDirectories(folder.File("box")).Where(found => (found == place || Path.GetFileName(found).StartsWith($"{name}.before-", StringComparison.Ordinal)) && File.Exists(Path.Combine(found, "own.txt")));
        Assert.Equal($"own of {name}", File.ReadAllText(Path.Combine(Assert.Single(holders), "own.txt")));
    });

    /// <summary>All files with what they hold.</summary>
    private List<string> Listing() =>
        [.. Directory.EnumerateFileSystemEntries(folder.Path, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(path => $"{path} {(File.Exists(path) && !path.EndsWith(StoreLock.FileName, StringComparison.Ordinal) ? Convert.ToBase64String(File.ReadAllBytes(path)) : "")}")];

    private static IEnumerable<string> Names(string path) => Directory.GetFileSystemEntries(path).Select(found => Path.GetFileName(found)!).Order(StringComparer.Ordinal);

    private byte[] MakeDatabase()
    {
        var first = folder.File("first-data");
        if (!Directory.Exists(first))
        {
            using var store = StormStore.Open(first);
            store.WriteAsync(transaction => Meta.InstallationId(transaction), Cancellation).GetAwaiter().GetResult();
        }

        return File.ReadAllBytes(Path.Combine(first, "stormclock.db"));
    }

    /// <summary>A good backup, and what a test makes of it.</summary>
    private void MakeZip(Action<ZipArchive>? change = null)
    {
        File.Delete(Zip);
        var database = MakeDatabase();
        if (!File.Exists(folder.File("first-data/link-keys"))) Assert.NotNull(AckKeyFile.ReadOrMake(folder.File("first-data/link-keys")).Value);
        using (var zip = ZipFile.Open(Zip, ZipArchiveMode.Create))
        {
            zip.CreateEntryFromFile(folder.File("first-data/link-keys"), "data/link-keys");
            Put(zip, "config/stormclock.yaml", "pages: {listen: \"127.0.0.1:0\"}\n");
            Put(zip, "config/gardens/quay.yaml", SampleBook.Good);
            using var into = zip.CreateEntry("data/stormclock.db").Open();
            into.Write(database);
        }

        if (change is null) return;
        using var changed = ZipFile.Open(Zip, ZipArchiveMode.Update);
        change(changed);
    }

    private static ZipArchiveEntry Put(ZipArchive zip, string name, string content, CompressionLevel level = CompressionLevel.Optimal)
    {
        var entry = zip.CreateEntry(name, level);
        using var into = entry.Open();
        into.Write(Encoding.UTF8.GetBytes(content));
        return entry;
    }

    private static void Take(ZipArchive zip, string begin)
    {
        foreach (var entry in zip.Entries.Where(entry => entry.FullName.StartsWith(begin, StringComparison.Ordinal)).ToList()) entry.Delete();
    }

    /// <summary>Changes what the list at the end of the archive says of a file (its header, by APPNOTE 4.3.12).</summary>
    private void Spoil(string name, Action<byte[], int> change)
    {
        var bytes = File.ReadAllBytes(Zip);
        var at = bytes.AsSpan().LastIndexOf(Encoding.UTF8.GetBytes(name)) - 46;
        Assert.Equal(0x02014B50u, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(at)));
        change(bytes, at);
        File.WriteAllBytes(Zip, bytes);
    }
}
