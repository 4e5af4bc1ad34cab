using StormClock.Service.Delivery;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Outbox;

/// <summary>
/// The process dies at each point between claim and settlement. The death is played by copying the files as they stand
/// at that moment and starting again from the copy; the entry must go out at least once, always with the same bytes.
/// </summary>
public class DispatcherCrashTests
{
    public enum Point { BeforeClaim, AfterClaimBeforeSending, AfterSendingBeforeSettling, AfterSettling }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Point.BeforeClaim, 0, 1)]
    [InlineData(Point.AfterClaimBeforeSending, 0, 1)]
    // The one point at which a second copy cannot be avoided, only marked as the same message.
    [InlineData(Point.AfterSendingBeforeSettling, 1, 1)]
    [InlineData(Point.AfterSettling, 1, 0)]
    public async Task Crash_AtPoint_IsSentAtLeastOnceUnderOneId(Point point, int sentBefore, int sentAfter)
    {
        using var folder = new TempFolder();
        using var copy = new TempFolder();
        var clock = new TestClock(Entries.Start);
        var entry = Entries.Make("x");
        var before = new List<Outgoing>();
        using (var store = StormStore.Open(folder.Path))
        {
            await store.WriteAsync(tx => OutboxTable.Insert(tx, entry), Cancellation);
            if (point == Point.BeforeClaim) Copy(folder, copy);
            var channel = new TestChannel("email", (message, _) =>
            {
                if (point == Point.AfterClaimBeforeSending) Copy(folder, copy);
                else if (point != Point.BeforeClaim) before.Add(message);
                if (point == Point.AfterSendingBeforeSettling) Copy(folder, copy);
                return Task.FromResult(new DeliveryOutcome(DeliveryResult.Delivered, "ok"));
            });
            using var dispatcher = new Dispatcher(store, [channel], clock);
            await dispatcher.RunAsync(Cancellation);
            if (point == Point.AfterSettling) Copy(folder, copy);
        }

        using var reopened = StormStore.Open(copy.Path);
        var again = new TestChannel("email", DeliveryResult.Delivered);
        using var next = new Dispatcher(reopened, [again], clock);
        await next.RunAsync(Cancellation);

        Assert.Equal(sentBefore, before.Count);
        Assert.Equal(sentAfter, again.Sent.Count);
        Assert.All(before.Concat(again.Sent), message => Assert.Equal(entry.Message with { UsefulUntil = entry.UsefulUntil }, message));
        Assert.Equal(OutboxState.Sent, reopened.Read(reader => OutboxTable.Find(reader, entry.Id))!.State);
    }

    /// <summary>In a heap a crash repeats at most the group at hand: a hundredth of what is due, 16 at most, and one where few are due.</summary>
    [Theory]
    [InlineData(30, 17, 1)]
    [InlineData(199, 150, 1)]
    [InlineData(500, 333, 5)]
    [InlineData(1700, 1690, 16)]
    public async Task Crash_InAHeap_RepeatsNoMoreThanTheGroupAtHand(int due, int answered, int most)
    {
        using var folder = new TempFolder();
        using var copy = new TempFolder();
        var clock = new TestClock(Entries.Start);
        var before = new List<string>();
        using (var store = StormStore.Open(folder.Path))
        {
            await store.WriteAsync(
                tx =>
                {
                    for (var i = 0; i < due; i++) OutboxTable.Insert(tx, Entries.Make($"e{i}"));
                },
                Cancellation);
            var channel = new TestChannel("email", (message, _) =>
            {
                if (before.Count == answered) Copy(folder, copy);
                if (before.Count <= answered) before.Add(message.MessageId);
                return Task.FromResult(new DeliveryOutcome(DeliveryResult.Delivered, "ok"));
            });
            using var dispatcher = new Dispatcher(store, [channel], clock);
            await dispatcher.RunAsync(Cancellation);
        }

        using var reopened = StormStore.Open(copy.Path);
        var again = new TestChannel("email", DeliveryResult.Delivered);
        using var next = new Dispatcher(reopened, [again], clock);
        await next.RunAsync(Cancellation);

        var later = again.Sent.Select(message => message.MessageId).ToList();
        Assert.InRange(before.Intersect(later).Count(), 1, most);
        Assert.Equal(due, before.Union(later).Count());
        Assert.Equal(later.Count, later.Distinct().Count());
    }

    [Fact]
    public async Task Crash_AfterClaimAndBackOnlyAfterItsUse_IsNotSentLate()
    {
        using var folder = new TempFolder();
        var entry = Entries.Make("x") with { State = OutboxState.Claimed, Attempts = 1 };
        using var store = StormStore.Open(folder.Path);
        await store.WriteAsync(tx => OutboxTable.Insert(tx, entry), Cancellation);
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        using var dispatcher = new Dispatcher(store, [channel], new TestClock(entry.UsefulUntil));

        await dispatcher.RunAsync(Cancellation);

        Assert.Empty(channel.Sent);
        Assert.Equal(OutboxState.Expired, store.Read(reader => OutboxTable.Find(reader, entry.Id))!.State);
    }

    private static void Copy(TempFolder from, TempFolder to)
    {
        foreach (var name in new[] { "stormclock.db", "stormclock-log.db" })
        {
            using var source = new FileStream(from.File(name), FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var target = new FileStream(to.File(name), FileMode.Create);
            source.CopyTo(target);
        }
    }
}
