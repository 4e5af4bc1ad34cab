using StormClock.Service.Delivery;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Outbox;

public sealed class DispatcherTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly TestClock clock = new(Entries.Start);
    private readonly StormStore store;

    public DispatcherTests() => store = StormStore.Open(folder.Path);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Theory]
    [InlineData(DeliveryResult.Delivered, OutboxState.Sent, null)]
    [InlineData(DeliveryResult.Refused, OutboxState.Refused, null)]
    [InlineData(DeliveryResult.TryAgain, OutboxState.Waiting, 1)]
    [InlineData(DeliveryResult.Unknown, OutboxState.Waiting, 1)]
    public async Task Run_ByOutcome_SettlesSo(DeliveryResult result, OutboxState state, int? minutes)
    {
        await Write(Entries.Make("x"));
        var channel = new TestChannel("email", result);

        await Run(channel);

        var entry = Stored("x");
        Assert.Equal(state, entry.State);
        Assert.Equal(1, entry.Attempts);
        Assert.Equal($"said {result}", entry.Detail);
        Assert.Equal(minutes is null ? Entries.Start : null, entry.Settled);
        if (minutes is { } wait) Assert.Equal(Entries.Start + Duration.FromMinutes(wait), entry.NextTry);
    }

    [Fact]
    public async Task Run_AgainAndAgain_TriesAtTheBackoffTimesWithTheSameMessageIdUntilItExpires()
    {
        await Write(Entries.Make("x", useful: Duration.FromMinutes(75)));
        var tries = new List<int>();
        var channel = new TestChannel("email", (_, _) =>
        {
            tries.Add((int)(clock.GetCurrentInstant() - Entries.Start).TotalMinutes);
            return Task.FromResult(new DeliveryOutcome(DeliveryResult.Unknown, "no answer"));
        });

        for (var minute = 0; minute < 200; minute++)
        {
            await Run(channel);
            clock.Advance(Duration.FromMinutes(1));
        }

        // 1, 2, 5, 10, 20, 30 minutes apart; the next would be at 98 minutes, after its use.
        Assert.Equal([0, 1, 3, 8, 18, 38, 68], tries);
        Assert.Single(channel.Sent.Select(message => message.MessageId).Distinct());
        Assert.Single(channel.Sent.Distinct());
        Assert.Equal(OutboxState.Expired, Stored("x").State);
        Assert.Contains("no answer", Stored("x").Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_OtherSideSaidHowLong_WaitsThatLong()
    {
        await Write(Entries.Make("x"));

        await Run(new TestChannel("email", DeliveryResult.TryAgain, Duration.FromMinutes(45)));

        Assert.Equal(Entries.Start + Duration.FromMinutes(45), Stored("x").NextTry);
    }

    [Theory]
    [InlineData(-1, true)]
    [InlineData(0, false)]
    [InlineData(1, false)]
    public async Task Run_AroundUsefulUntil_NeverSendsAtOrAfterIt(int nanoseconds, bool sends)
    {
        var entry = Entries.Make("x");
        await Write(entry);
        clock.Advance(entry.UsefulUntil - Entries.Start + Duration.FromNanoseconds(100 * nanoseconds));
        var channel = new TestChannel("email", DeliveryResult.Delivered);

        await Run(channel);

        Assert.Equal(sends ? 1 : 0, channel.Sent.Count);
        Assert.Equal(sends ? OutboxState.Sent : OutboxState.Expired, Stored("x").State);
    }

    [Fact]
    public async Task Run_FirstEntrySlow_SecondWhoseUseHasPassedMeanwhileIsNotSent()
    {
        await Write(Entries.Make("slow", urgent: true), Entries.Make("short", useful: Duration.FromMinutes(10)));
        var channel = new TestChannel("email", (_, _) =>
        {
            clock.Advance(Duration.FromMinutes(15));
            return Task.FromResult(new DeliveryOutcome(DeliveryResult.Delivered, "ok"));
        });

        await Run(channel);

        Assert.Equal("Text of slow", Assert.Single(channel.Sent).Text);
        Assert.Equal(OutboxState.Expired, Stored("short").State);
    }

    [Fact]
    public async Task Run_ClaimTookSoLongThatItsUseHasPassed_IsNotSent()
    {
        await Write(Entries.Make("x", useful: Duration.FromMinutes(10)));
        // Read to find what is due, to claim, and to look once more: 0, 6 and 12 minutes.
        clock.StepPerReading = Duration.FromMinutes(6);
        var channel = new TestChannel("email", DeliveryResult.Delivered);

        await Run(channel);

        Assert.Empty(channel.Sent);
        Assert.Equal(OutboxState.Expired, Stored("x").State);
    }

    [Theory]
    // The next try would be after 1 minute.
    [InlineData(60, OutboxState.Expired)]
    [InlineData(61, OutboxState.Waiting)]
    public async Task Run_NextTryNotBeforeItsUseEnds_ExpiresAtOnce(int usefulSeconds, OutboxState state)
    {
        await Write(Entries.Make("x", useful: Duration.FromSeconds(usefulSeconds)));

        await Run(new TestChannel("email", DeliveryResult.TryAgain));

        Assert.Equal(state, Stored("x").State);
    }

    [Fact]
    public async Task Run_BeforeItsMoment_SendsNothing()
    {
        await Write(Entries.Make("x", Entries.Start + Duration.FromMinutes(1)));
        var channel = new TestChannel("email", DeliveryResult.Delivered);

        await Run(channel);
        Assert.Empty(channel.Sent);

        clock.Advance(Duration.FromMinutes(1));
        await Run(channel);
        Assert.Single(channel.Sent);
    }

    [Fact]
    public async Task Run_OneEntryMakesTheChannelThrow_OthersAreSentAndItWaits()
    {
        await Write(Entries.Make("bad", urgent: true), Entries.Make("good 1"), Entries.Make("good 2"), Entries.Make("no such channel", channel: "pigeon"));
        var channel = new TestChannel("email", (message, _) => message.Text == "Text of bad"
            ? throw new InvalidOperationException("broken template")
            : Task.FromResult(new DeliveryOutcome(DeliveryResult.Delivered, "ok")));

        var run = await Run(channel);

        Assert.Equal(4, run.Settled.Count);
        Assert.Equal(OutboxState.Waiting, Stored("bad").State);
        Assert.Contains("broken template", Stored("bad").Detail, StringComparison.Ordinal);
        Assert.Equal(OutboxState.Sent, Stored("good 1").State);
        Assert.Equal(OutboxState.Sent, Stored("good 2").State);
        Assert.Equal(OutboxState.Waiting, Stored("no such channel", "pigeon").State);
        Assert.Contains("pigeon", Stored("no such channel", "pigeon").Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_OneChannelHangs_TheOtherStillDelivers()
    {
        await Write(Entries.Make("mail", urgent: true), Entries.Make("push", channel: "push"));
        var pushed = new TaskCompletionSource();
        var mail = new TestChannel("email", async (_, cancellation) =>
        {
            await pushed.Task.WaitAsync(cancellation);
            return new DeliveryOutcome(DeliveryResult.Delivered, "late");
        });
        var push = new TestChannel("push", (_, _) =>
        {
            pushed.SetResult();
            return Task.FromResult(new DeliveryOutcome(DeliveryResult.Delivered, "ok"));
        });

        await Run(mail, push);

        Assert.Equal(OutboxState.Sent, Stored("mail").State);
        Assert.Equal(OutboxState.Sent, Stored("push", "push").State);
    }

    [Fact]
    public async Task Run_CancelledWhileSending_StopsAndTheEntryIsTriedAgainUnderItsId()
    {
        await Write(Entries.Make("first", urgent: true), Entries.Make("second"));
        using var stop = new CancellationTokenSource();
        var hanging = new TestChannel("email", async (_, cancellation) =>
        {
            await stop.CancelAsync();
            await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancellation);
            throw new InvalidOperationException("not reached");
        });
        using (var stopped = new Dispatcher(store, [hanging], clock))
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => stopped.RunAsync(stop.Token));
        Assert.Single(hanging.Sent);
        Assert.Equal(OutboxState.Waiting, Stored("first").State);
        Assert.Equal(0, Stored("second").Attempts);

        clock.Advance(Duration.FromMinutes(1));
        var working = new TestChannel("email", DeliveryResult.Delivered);
        await Run(working);

        Assert.Contains(working.Sent, message => message == hanging.Sent.Single());
        Assert.Equal(2, working.Sent.Count);
    }

    [Fact]
    public async Task Run_CancelledInAHeap_PutsTheRestOfTheGroupBackUntried()
    {
        await Write([.. Enumerable.Range(0, 500).Select(i => Entries.Make($"e{i}"))]);
        using var stop = new CancellationTokenSource();
        var sent = 0;
        var channel = new TestChannel("email", async (_, _) =>
        {
            if (++sent == 12) await stop.CancelAsync();
            return new DeliveryOutcome(DeliveryResult.Delivered, "ok");
        });
        using (var stopped = new Dispatcher(store, [channel], clock))
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => stopped.RunAsync(stop.Token));

        var waiting = store.Read(reader => OutboxTable.InState(reader, OutboxState.Waiting));
        Assert.Equal((12, 488), (channel.Sent.Count, waiting.Count));
        Assert.All(waiting, entry => Assert.Equal(0, entry.Attempts));
    }

    [Fact]
    public async Task Run_TwoAtOnce_SendEachEntryOnce()
    {
        await Write([.. Enumerable.Range(0, 10).Select(i => Entries.Make($"e{i}"))]);
        var channel = new TestChannel("email", async (_, _) =>
        {
            await Task.Yield();
            return new DeliveryOutcome(DeliveryResult.Delivered, "ok");
        });
        using var dispatcher = new Dispatcher(store, [channel], clock);

        await Task.WhenAll(dispatcher.RunAsync(Cancellation), dispatcher.RunAsync(Cancellation), dispatcher.RunAsync(Cancellation));

        Assert.Equal(10, channel.Sent.Count);
    }

    [Fact]
    public async Task Run_WithdrawnWhileAnotherIsSent_IsNotSent()
    {
        await Write(Entries.Make("first", urgent: true), Entries.Make("second"));
        var channel = new TestChannel("email", async (_, cancellation) =>
        {
            await store.WriteAsync(tx => Reconciler.Apply(tx, "hollow", [Entries.Make("first", urgent: true)], clock.GetCurrentInstant()), cancellation);
            return new DeliveryOutcome(DeliveryResult.Delivered, "ok");
        });

        await Run(channel);

        Assert.Equal("Text of first", Assert.Single(channel.Sent).Text);
        Assert.Equal(OutboxState.Withdrawn, Stored("second").State);
    }

    [Fact]
    public async Task Run_EntryLeftClaimedAgainAndAgain_ComesBackAtOnceThenEverLater()
    {
        await Write(Entries.Make("poison") with { State = OutboxState.Claimed, Attempts = 1 }, Entries.Make("poison 5") with { State = OutboxState.Claimed, Attempts = 5 }, Entries.Make("poison 6") with { State = OutboxState.Claimed, Attempts = 6 });
        var channel = new TestChannel("email", DeliveryResult.Delivered);

        var run = await Run(channel);

        Assert.Equal(3, run.Released.Count);
        Assert.Equal(OutboxState.Sent, Stored("poison").State);
        Assert.Equal(OutboxState.Sent, Stored("poison 5").State);
        Assert.Equal(OutboxState.Waiting, Stored("poison 6").State);
        Assert.Equal(Entries.Start + Duration.FromMinutes(20), Stored("poison 6").NextTry);
    }

    [Fact]
    public async Task Health_DeadSender_ShowsTheAgeOfTheOldestSendableEntry()
    {
        await Write(
            Entries.Make("old"), Entries.Make("newer", Entries.Start + Duration.FromMinutes(5)), Entries.Make("future", Entries.Start + Duration.FromHours(3)),
            Entries.Make("gone", Entries.Start - Duration.FromHours(2)) with { State = OutboxState.Sent });
        await Run(new TestChannel("email", DeliveryResult.TryAgain));
        clock.Advance(Duration.FromMinutes(40));

        var health = store.Read(reader => OutboxHealth.Of(reader, clock.GetCurrentInstant()));

        Assert.Equal(Duration.FromMinutes(40), health.OldestUnsentAge);
        Assert.Equal("said TryAgain", health.OldestUnsentDetail);
        Assert.Equal(3, health.Counts[OutboxState.Waiting]);
        Assert.Equal(1, health.Counts[OutboxState.Sent]);
        Assert.Equal(0, health.Counts[OutboxState.Refused]);
    }

    [Fact]
    public async Task Health_NothingSendable_HasNoAge()
    {
        await Write(Entries.Make("future", Entries.Start + Duration.FromHours(3)));

        Assert.Null(store.Read(reader => OutboxHealth.Of(reader, Entries.Start)).OldestUnsentAge);
    }

    /// <summary>Refusals of long ago are history.</summary>
    [Fact]
    public async Task Health_ParkedAndWaiting_IsCountedByChannel()
    {
        OutboxEntry Refused(string name, string channel, int daysAgo) => Entries.Make(name, channel: channel) with { State = OutboxState.Refused, Settled = Entries.Start - Duration.FromDays(daysAgo) };
        await Write(Entries.Make("a"), Refused("b", "push", 1), Refused("c", "push", 6), Refused("d", "push", 8), Refused("e", "webhook", 30));

        Assert.Equal([new("email", 1, 0), new ChannelCount("push", 0, 2)], store.Read(reader => OutboxHealth.Of(reader, Entries.Start)).Channels);
    }

    private Task Write(params OutboxEntry[] entries) =>
        store.WriteAsync(tx => Array.ForEach(entries, entry => OutboxTable.Insert(tx, entry)), Cancellation);

    private async Task<DispatchRun> Run(params IChannel[] channels)
    {
        using var dispatcher = new Dispatcher(store, channels, clock);
        return await dispatcher.RunAsync(Cancellation);
    }

    private OutboxEntry Stored(string occasion, string channel = "email") =>
        store.Read(reader => OutboxTable.Find(reader, Entries.Make(occasion, channel: channel).Id))!;
}
