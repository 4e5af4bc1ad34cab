using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Quartz;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The real host with a clock that is set by hand, in steps as long as a test likes.</summary>
internal sealed class VirtualService : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly TempFolder? ownFolder;
    private readonly FakeTimeProvider time;
    private readonly WebApplication host;
    private readonly Heartbeat heartbeat;

    private VirtualService(TempFolder? ownFolder, FakeTimeProvider time, WebApplication host, StormStore store)
    {
        this.ownFolder = ownFolder;
        this.time = time;
        this.host = host;
        Store = store;
        heartbeat = host.Services.GetRequiredService<Heartbeat>();
        host.Services.GetRequiredService<Journal>().Written += Said.Enqueue;
    }

    public StormStore Store { get; }

    public IServiceProvider Services => host.Services;

    /// <summary>Everything that happened, in order.</summary>
    public ConcurrentQueue<JournalEntry> Said { get; } = [];

    /// <summary>Of the pages.</summary>
    public Uri Address => new(host.Urls.Single());

    public Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    /// <summary>Starts at a time and takes the first turn.</summary>
    /// <param name="data">Data folder; null for one of its own.</param>
    public static async Task<VirtualService> StartAsync(
        Instant begin, GardenShelf shelf, Func<IClock, IReadOnlyList<IFeed>> feeds, IChannel channel, Duration listenEvery, bool practice, string? data = null, Func<HostPlan, HostPlan>? change = null)
    {
        var own = data is null ? new TempFolder() : null;
        var folder = data ?? own!.Path;
        var time = new FakeTimeProvider(begin.ToDateTimeOffset());
        var store = StormStore.Open(folder);
        var plan = new HostPlan(folder, shelf, feeds, channel, time, new("http://127.0.0.1:0"), null, listenEvery, begin, LinksPerMinute: 60, Practice: practice);
        var host = Composition.Build(change?.Invoke(plan) ?? plan, store);
        var service = new VirtualService(own, time, host, store);
        await host.StartAsync(TestContext.Current.CancellationToken);
        await service.HearAsync(1);
        return service;
    }

    /// <summary>Moves the clock in one step, and waits until every turn that is due by then has been taken.</summary>
    public async Task AdvanceAsync(Duration by)
    {
        var due = await DueAsync(Now + by);
        var beats = heartbeat.Count + due;
        time.Advance(by.ToTimeSpan());
        await HearAsync(beats);
    }

    /// <summary>Somebody, or a time server, sets the clock; no timer moves with it. Then as much time passes, and so many turns are waited for.</summary>
    public async Task SetClockAsync(Instant at, Duration then, int turns)
    {
        var beats = heartbeat.Count + turns;
        time.AdjustTime(at.ToDateTimeOffset());
        time.Advance(then.ToTimeSpan());
        await HearAsync(beats);
    }

    public IReadOnlyList<OutboxEntry> Outbox(string gardenId) => Store.Read(reader => OutboxTable.OfGarden(reader, gardenId));

    public async ValueTask DisposeAsync()
    {
        await host.StopAsync();
        await host.DisposeAsync();
        Store.Dispose();
        ownFolder?.Dispose();
    }

    private async Task HearAsync(long beats)
    {
        await heartbeat.ReachAsync(beats).WaitAsync(Patience, TestContext.Current.CancellationToken);
        Assert.Null(heartbeat.Fault);
    }

    /// <summary>How many of the two triggers fire by then; however long the step, each fires once.</summary>
    private async Task<int> DueAsync(Instant by)
    {
        var scheduler = await host.Services.GetRequiredService<ISchedulerFactory>().GetScheduler(TestContext.Current.CancellationToken);
        var due = 0;
        foreach (var key in new[] { AlarmClock.ListenTrigger, AlarmClock.WakeTrigger })
        {
            if (await scheduler.GetTrigger(key, TestContext.Current.CancellationToken) is { NextFireTimeUtc: { } at } && at <= by.ToDateTimeOffset()) due++;
        }

        return due;
    }
}
