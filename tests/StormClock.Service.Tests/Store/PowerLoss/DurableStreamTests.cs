using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>The order of writes and syncs; it hangs on the page layout of the engine, so it fails when that changes.</summary>
public class DurableStreamTests
{
    private const int Data = 0;
    private const int Log = 1;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1)]
    [InlineData(40)]
    public async Task Commit_OfSoManyDocuments_SyncsTheLogTwiceAndTheDataNever(int documents)
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        using var store = new StormStore(disk.DurableStreams);
        var before = disk.Ops.Count;

        await store.WriteAsync(
            tx =>
            {
                for (var i = 0; i < documents; i++) OutboxTable.Insert(tx, Entries.Make($"o{i}"));
                Meta.Put(tx, "also", "this");
            },
            Cancellation);

        Assert.Equal(2, disk.CountSyncs(Log, before));
        Assert.Equal(0, disk.CountSyncs(Data, before));
        // Sync, the finishing page, sync, and nothing after it.
        var last = disk.Ops.TakeLast(3).ToList();
        Assert.True(last[0].IsSync && !last[1].IsSync && last[2].IsSync);
        Assert.Equal(8192, last[1].Bytes!.Length);
        Assert.True(disk.Ops.Count - before > 3, "the other pages stand before the first sync");
    }

    [Fact]
    public void Read_Alone_WritesAndSyncsNothing()
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        using var store = new StormStore(disk.DurableStreams);
        var before = disk.Ops.Count;

        store.Read(reader => OutboxTable.Due(reader, Entries.Start));

        Assert.Equal(before, disk.Ops.Count);
    }

    [Fact]
    public void Open_AfterAKill_SyncsBothFilesBeforeAnythingElse()
    {
        var disk = SimulatedDisk.WithEmptyDatabase();

        disk.DurableStreams().Dispose();

        Assert.Equal([Data, Log], disk.Ops.Select(op => op.File));
        Assert.All(disk.Ops, op => Assert.True(op.IsSync));
    }

    [Fact]
    public void Write_RefusedByTheDisk_IsKeptAsTroubleAndNothingMoreIsWrittenToEitherFile()
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        using var streams = disk.DurableStreams();
        disk.Capacity = disk.Start[Data].Length;
        streams.Log.Write(new byte[8192], 0, 8192);
        disk.Capacity = long.MaxValue;
        var after = disk.Ops.Count;

        streams.Log.Write(new byte[8192], 0, 8192);
        streams.Data.SetLength(0);
        streams.Data.Flush();

        Assert.Equal(after, disk.Ops.Count);
        Assert.Throws<IOException>(streams.Trouble.ThrowIfAny);
        Assert.Throws<IOException>(() => streams.Data.ReadExactly(new byte[10], 0, 10));
    }
}
