using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>The disk takes no more bytes: acknowledged data stays, reading goes on, and writing resumes when there is room.</summary>
public class FullDiskTests
{
    private const int Page = 8192;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(40 * Page)]
    // The last page fits in part only.
    [InlineData((70 * Page) + 4096)]
    [InlineData((90 * Page) + 1)]
    // Full while the log is folded into the data file, which happens each time it has grown by 128 pages.
    [InlineData(131 * Page)]
    [InlineData(260 * Page)]
    public async Task Write_DiskFull_LosesNothingAcknowledgedAndResumes(int roomBytes)
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        disk.Capacity = disk.Start[0].Length + roomBytes;
        using var store = new StormStore(disk.DurableStreams);
        var acknowledged = 0;

        var refused = await Assert.ThrowsAsync<StoreUnavailableException>(async () =>
        {
            while (true)
            {
                await InsertAsync(store, acknowledged);
                acknowledged++;
            }
        });

        Assert.Contains("no space left", refused.Message, StringComparison.Ordinal);
        Assert.True(acknowledged > 3, $"only {acknowledged} writes before the disk was full");
        var there = CountWhileFull(store, acknowledged);
        disk.Capacity = long.MaxValue;
        for (var i = 0; i < 20; i++) await InsertAsync(store, there + i);
        AssertHolds(store, there + 20);
        using var reopened = new StormStore(new SimulatedDisk(disk.Contents(0), disk.Contents(1)).DurableStreams);
        AssertHolds(reopened, there + 20);
    }

    /// <summary>
    /// The engine's own objects, left behind by broken-off writes, are finalized without an exception. When the refusal of
    /// the disk was passed on to the engine they threw, which ends a process, or leaves it without finalizers.
    /// </summary>
    [Fact]
    public async Task Write_DiskFullAgainAndAgain_LeavesNothingThatFailsWhenCollected()
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        using (var store = new StormStore(disk.DurableStreams))
        {
            for (var round = 0; round < 30; round++)
            {
                disk.Capacity = disk.Contents(0).Length + disk.Contents(1).Length + (round % 5 * Page) + 100;
                var big = new HeardAdvisory($"big {round}", new byte[20 * Page], "cap", Entries.Start, Entries.Start, "feed");
                await Assert.ThrowsAsync<StoreUnavailableException>(() => store.WriteAsync(tx => Advisories.Add(tx, big), Cancellation));
            }
        }

        await Task.Run(CollectAll, Cancellation).WaitAsync(TimeSpan.FromSeconds(30), Cancellation);
    }

    private static void CollectAll()
    {
        // What one finalizer lets go of is collected the next time only.
        for (var i = 0; i < 5; i++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }
    }

    private static int CountWhileFull(StormStore store, int acknowledged)
    {
        // A write that failed may be found all the same; no later one can be.
        var there = store.Read(reader => OutboxTable.OfGarden(reader, "hollow").Count);
        Assert.InRange(there, acknowledged, acknowledged + 1);
        AssertHolds(store, there);
        return there;
    }

    private static void AssertHolds(StormStore store, int count)
    {
        Assert.Equal(
            Enumerable.Range(0, count).Select(i => $"Text of o{i}").Order(StringComparer.Ordinal),
            store.Read(reader => OutboxTable.OfGarden(reader, "hollow")).Select(entry => entry.Message.Text).Order(StringComparer.Ordinal));
        Assert.True(store.Read(StoreState.IndexesMatch));
    }

    private static Task InsertAsync(StormStore store, int i) => store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make($"o{i}")), Cancellation);
}
