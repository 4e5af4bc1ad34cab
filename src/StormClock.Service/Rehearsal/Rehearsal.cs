using System.Runtime.ExceptionServices;
using Microsoft.Extensions.Time.Testing;
using Quartz;
using StormClock.Core.Stages;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Service.Rehearsal;

/// <summary>
/// Plays a recorded storm through the real host: its feeds, desk, store, outbox, mail and pages, with only the clock set by
/// hand. The clock goes from one wake-up to the next; nothing is skipped and nothing waits.
/// </summary>
internal sealed class Rehearsal
{
    private const string ClockKey = "rehearsal-clock";
    private static readonly Duration ListenEvery = Duration.FromMinutes(30);

    /// <summary>How long the clock runs on after the last message when the garden is still waiting for something.</summary>
    private static readonly Duration LongestTail = Duration.FromDays(6);

    /// <summary>How long it runs on when nothing is waited for.</summary>
    private static readonly Duration ShortestTail = Duration.FromHours(30);

    /// <summary>By the real clock: a turn that takes longer has failed.</summary>
    private static readonly TimeSpan LongestTurn = TimeSpan.FromMinutes(2);

    private readonly RehearsalPlan plan;
    private readonly FakeTimeProvider time;
    private readonly WebApplication host;
    private readonly StormStore store;
    private readonly RehearsalLog log;

    private Rehearsal(RehearsalPlan plan, StormStore store, FakeTimeProvider time, WebApplication host, RehearsalLog log)
    {
        this.plan = plan;
        this.store = store;
        this.time = time;
        this.host = host;
        this.log = log;
    }

    public static async Task<IReadOnlyList<JournalEntry>> RunAsync(RehearsalPlan plan, TextWriter output)
    {
        using var folders = new RehearsalFolders(plan);
        var store = StormStore.Open(folders.Data);
        await store.WriteAsync(transaction => Meta.NameInstallation(transaction, "rehearsal"));
        var firstListen = plan.Advisories[0].HeardAt - ListenEvery;
        var begin = store.Read(reader => Meta.Find(reader, ClockKey)) is { } text
            ? NodaTime.Text.InstantPattern.ExtendedIso.Parse(text).GetValueOrThrow()
            : firstListen;
        var nextListen = NextListen(firstListen, begin);
        var time = new FakeTimeProvider(begin.ToDateTimeOffset());
        var recorded = plan.Advisories.Select(entry => (entry.HeardAt, entry.Raw)).ToList();
        IChannel channel = plan.Server is { } server ? new SmtpChannel(server) : new EmlChannel(folders.Output, LoopbackServer.Sender);
        await using var host = Composition.Build(
            new(
                folders.Data, new GardenShelf([plan.Garden]), clock => [new ReplayFeed(recorded, clock)], channel, time, new("http://127.0.0.1:0"), RehearsalPeople.PagesAddress,
                ListenEvery, nextListen, LinksPerMinute: int.MaxValue, Practice: true),
            store);
        using var log = new RehearsalLog(host.Services.GetRequiredService<Journal>(), plan.Garden, folders.Output, output);
        await host.StartAsync();
        await new Rehearsal(plan, store, time, host, log).PlayAsync(listensFirst: nextListen == begin);
        await host.StopAsync();
        return log.Entries;
    }

    private async Task PlayAsync(bool listensFirst)
    {
        var scheduler = await host.Services.GetRequiredService<ISchedulerFactory>().GetScheduler();
        var heartbeat = host.Services.GetRequiredService<Heartbeat>();
        using var people = RehearsalPeople.For(plan, host, store);
        await FirstTurnAsync(listensFirst, heartbeat);
        people.Remember();
        while (true)
        {
            if (heartbeat.Fault is { } fault) ExceptionDispatchInfo.Throw(fault);
            var (next, turns) = await NextTurnAsync(scheduler);
            if (people.NextPress is { } press && press < next) (next, turns) = (Instant.Max(press, Now), 0);
            if (IsOver(next)) return;

            var beats = heartbeat.Count + turns;
            await KeepClockAsync(next);
            AdvanceTo(next);
            await heartbeat.ReachAsync(beats).WaitAsync(LongestTurn);
            await people.PressAsync(Now);
        }
    }

    private Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    private void AdvanceTo(Instant next)
    {
        if (next > Now) time.Advance((next - Now).ToTimeSpan());
    }

    /// <summary>
    /// The turn in which the clock starts: a look at the feeds, or, where an earlier rehearsal was broken off between two
    /// looks, only the decision it had come to. The feeds keep the pace they had, else other advisories would meet other times.
    /// </summary>
    private async Task FirstTurnAsync(bool listens, Heartbeat heartbeat)
    {
        if (listens) await heartbeat.ReachAsync(1).WaitAsync(LongestTurn);
        else await host.Services.GetRequiredService<Turns>().TakeAsync(listen: false, CancellationToken.None);
    }

    /// <summary>The first look at the feeds at or after a time.</summary>
    private static Instant NextListen(Instant first, Instant at)
    {
        var gone = (at - first).TotalTicks / ListenEvery.TotalTicks;
        return first + (ListenEvery * (long)Math.Ceiling(gone));
    }

    /// <summary>When the next trigger fires, and how many fire then.</summary>
    private static async Task<(Instant At, int Turns)> NextTurnAsync(IScheduler scheduler)
    {
        var fires = new List<Instant>();
        foreach (var key in new[] { AlarmClock.ListenTrigger, AlarmClock.WakeTrigger })
        {
            if (await scheduler.GetTrigger(key) is { NextFireTimeUtc: { } at }) fires.Add(Instant.FromDateTimeOffset(at));
        }

        var next = fires.Min();
        return (next, fires.Count(fire => fire == next));
    }

    /// <summary>A rehearsal that is broken off goes on from here, where its database is kept.</summary>
    private Task KeepClockAsync(Instant next) => plan.DataFolder is null ? Task.CompletedTask : store.WriteAsync(transaction =>
    {
        Meta.Put(transaction, ClockKey, NodaTime.Text.InstantPattern.ExtendedIso.Format(next));
        return true;
    });

    private bool IsOver(Instant next)
    {
        var last = plan.Advisories[^1].HeardAt;
        if (next <= last + ShortestTail) return false;
        if (next > last + LongestTail) return true;
        var stage = host.Services.GetRequiredService<GardenDesk>().Latest[plan.Garden.Id].Standing.Stage.Stage;
        var waiting = store.Read(OutboxTable.NextDue) is not null;
        return stage is Stage.NothingDue or Stage.Recheck && !waiting;
    }
}
