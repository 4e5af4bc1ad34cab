using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store;

public class StormStoreTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Write_ThenReopen_IsThere()
    {
        using var folder = new TempFolder();
        using (var store = StormStore.Open(folder.Path))
        {
            await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("first")), Cancellation);
            Assert.Single(store.Read(reader => OutboxTable.Due(reader, Entries.Start)));
        }

        using var again = StormStore.Open(folder.Path);
        Assert.Equal("Text of first", Assert.Single(again.Read(reader => OutboxTable.Due(reader, Entries.Start))).Message.Text);
    }

    [Fact]
    public async Task Write_FunctionThrows_NothingOfItKeptAndNextWriteWorks()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);

        var thrown = await Assert.ThrowsAsync<FormatException>(() => store.WriteAsync(
            tx =>
            {
                OutboxTable.Insert(tx, Entries.Make("half"));
                JobStates.Put(tx, "hollow", "2027-1", new JobState("b1", JobProgress.Done, Entries.Start, "ada"));
                throw new FormatException("in the middle");
            },
            Cancellation));

        Assert.Equal("in the middle", thrown.Message);
        Assert.Empty(store.Read(reader => OutboxTable.OfGarden(reader, "hollow")));
        Assert.Empty(store.Read(reader => JobStates.OfEpisode(reader, "hollow", "2027-1")));
        await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("whole")), Cancellation);
        Assert.Single(store.Read(reader => OutboxTable.OfGarden(reader, "hollow")));
    }

    [Fact]
    public void Open_FolderHeldByAnother_IsRefusedByName()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);

        var refused = Assert.Throws<StoreInUseException>(() => StormStore.Open(folder.Path));

        Assert.Contains("another StormClock uses this data folder", refused.Message, StringComparison.Ordinal);
        Assert.Contains(folder.Path, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_FromEightTasks_AllThereAndAllInOneOrder()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        const string Key = "counter";

        await Task.WhenAll(Enumerable.Range(0, 8).Select(writer => Task.Run(
            async () =>
            {
                for (var i = 0; i < 25; i++)
                {
                    var occasion = $"{writer}/{i}";
                    await store.WriteAsync(
                        tx =>
                        {
                            OutboxTable.Insert(tx, Entries.Make(occasion));
                            Meta.Put(tx, Key, $"{int.Parse(Meta.Find(tx, Key) ?? "0", System.Globalization.CultureInfo.InvariantCulture) + 1}");
                        },
                        Cancellation);
                    Assert.NotEmpty(store.Read(reader => OutboxTable.Due(reader, Entries.Start)));
                }
            },
            Cancellation)));

        Assert.Equal("200", store.Read(reader => Meta.Find(reader, Key)));
        Assert.Equal(200, store.Read(reader => OutboxTable.OfGarden(reader, "hollow")).Count);
    }

    [Fact]
    public async Task Use_FromInsideAFunction_IsRefusedInsteadOfHanging()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);

        await Assert.ThrowsAsync<InvalidOperationException>(
            () => store.WriteAsync(_ => store.Read(reader => Meta.Find(reader, "x")), Cancellation));
    }

    [Fact]
    public async Task Transaction_UsedAfterItsFunction_IsRefused()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        StoreTransaction? kept = null;

        await store.WriteAsync(tx => kept = tx, Cancellation);

        Assert.Throws<InvalidOperationException>(() => Meta.Put(kept!, "late", "x"));
    }

    [Fact]
    public async Task Write_AfterDispose_IsRefused()
    {
        using var folder = new TempFolder();
        var store = StormStore.Open(folder.Path);
        store.Dispose();

        await Assert.ThrowsAsync<ObjectDisposedException>(() => store.WriteAsync(tx => Meta.Put(tx, "late", "x"), Cancellation));
    }

    [Fact]
    public async Task Dispose_WithMoreWritersThanTheQueueHolds_LeavesNobodyWaiting()
    {
        using var folder = new TempFolder();
        var store = StormStore.Open(folder.Path);
        using var go = new ManualResetEventSlim();
        using var entered = new ManualResetEventSlim();
        var first = store.WriteAsync(
            _ =>
            {
                entered.Set();
                go.Wait(Cancellation);
            },
            Cancellation);
        entered.Wait(Cancellation);
        var writers = Enumerable.Range(0, 600).Select(i => store.WriteAsync(tx => Meta.Put(tx, $"key {i}", "x"), Cancellation)).ToList();

        var disposing = Task.Run(store.Dispose, Cancellation);
        go.Set();
        await disposing;
        await first;
        var ends = await Task.WhenAll(writers.Select(async writer =>
        {
            try
            {
                await writer;
                return true;
            }
            catch (ObjectDisposedException)
            {
                return false;
            }
        })).WaitAsync(TimeSpan.FromSeconds(60), Cancellation);

        using var again = StormStore.Open(folder.Path);
        Assert.Equal(ends, Enumerable.Range(0, 600).Select(i => again.Read(reader => Meta.Find(reader, $"key {i}")) == "x"));
        Assert.True(ends[0], "what was queued before the end is finished");
    }

    [Fact]
    public async Task Write_FunctionCatchesAnErrorOfTheStoreAndGoesOn_IsNotAcknowledged()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("once")), Cancellation);

        await Assert.ThrowsAsync<InvalidOperationException>(() => store.WriteAsync(
            tx =>
            {
                Meta.Put(tx, "in the same transaction", "x");
                try
                {
                    OutboxTable.Insert(tx, Entries.Make("once"));
                }
                catch (LiteDB.LiteException)
                {
                }
            },
            Cancellation));

        Assert.Null(store.Read(reader => Meta.Find(reader, "in the same transaction")));
        await store.WriteAsync(tx => Meta.Put(tx, "next", "x"), Cancellation);
    }

    [Fact]
    public async Task Write_CancelledWhileQueued_DoesNotRun()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        using var entered = new ManualResetEventSlim();
        using var go = new ManualResetEventSlim();
        using var cancel = new CancellationTokenSource();

        var first = store.WriteAsync(
            tx =>
            {
                entered.Set();
                go.Wait(Cancellation);
                Meta.Put(tx, "first", "x");
            },
            Cancellation);
        entered.Wait(Cancellation);
        var second = store.WriteAsync(tx => Meta.Put(tx, "second", "x"), cancel.Token);
        await cancel.CancelAsync();
        go.Set();

        await first;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        Assert.Equal("x", store.Read(reader => Meta.Find(reader, "first")));
        Assert.Null(store.Read(reader => Meta.Find(reader, "second")));
    }

    [Fact]
    public async Task Ids_DifferingByCaseOnly_AreDifferent()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);

        await store.WriteAsync(
            tx =>
            {
                Meta.Put(tx, "Secret", "one");
                Meta.Put(tx, "secret", "two");
            },
            Cancellation);

        Assert.Equal("one", store.Read(reader => Meta.Find(reader, "Secret")));
        Assert.Equal("two", store.Read(reader => Meta.Find(reader, "secret")));
        Assert.Null(store.Read(reader => Meta.Find(reader, "SECRET")));
    }

    [Fact]
    public async Task Backup_RestoredIntoEmptyFolder_HoldsEverything()
    {
        using var folder = new TempFolder();
        using var other = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        for (var i = 0; i < 50; i++) await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make($"kept {i}")), Cancellation);

        await store.BackupAsync(other.File("stormclock.db"), Cancellation);
        await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("after the backup")), Cancellation);

        using var restored = StormStore.Open(other.Path);
        var there = restored.Read(reader => OutboxTable.OfGarden(reader, "hollow"));
        Assert.Equal(50, there.Count);
        Assert.All(there, entry => Assert.Equal(entry, restored.Read(reader => OutboxTable.FindByKey(reader, entry.Key)), new EntryEquality()));
        Assert.Equal(51, store.Read(reader => OutboxTable.OfGarden(reader, "hollow")).Count);
    }

    [Fact]
    public async Task Backup_TargetCannotBeWritten_FailsAndStoreGoesOn()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        await store.WriteAsync(tx => Meta.Put(tx, "kept", "x"), Cancellation);
        Directory.CreateDirectory(folder.File("occupied"));

        await Assert.ThrowsAnyAsync<Exception>(() => store.BackupAsync(folder.File("occupied"), Cancellation));

        Assert.Equal("x", store.Read(reader => Meta.Find(reader, "kept")));
    }

    [Fact]
    public async Task Open_NewerSchema_IsRefusedAndFilesAreLeft()
    {
        using var folder = new TempFolder();
        using (var store = StormStore.Open(folder.Path)) await store.WriteAsync(tx => Meta.Put(tx, "schemaVersion", "999"), Cancellation);

        Assert.Contains("schema 999", Assert.Throws<StoreTooNewException>(() => StormStore.Open(folder.Path)).Message, StringComparison.Ordinal);
        Assert.Contains("schema 999", Assert.Throws<StoreTooNewException>(() => StormStore.Open(folder.Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_DraftLeftByPowerLossWhileCreating_StartsAfresh()
    {
        using var folder = new TempFolder();
        await File.WriteAllBytesAsync(folder.File("stormclock.db.new"), new byte[5000], Cancellation);

        using var store = StormStore.Open(folder.Path);

        await store.WriteAsync(tx => Meta.Put(tx, "works", "yes"), Cancellation);
        Assert.False(File.Exists(folder.File("stormclock.db.new")));
    }
}
