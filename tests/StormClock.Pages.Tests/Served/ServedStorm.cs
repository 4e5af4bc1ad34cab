using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Quartz;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Garden;
using StormClock.Service;
using StormClock.Service.Commands;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Settings;
using StormClock.Service.Store;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Pages.Tests.Served;

/// <summary>
/// The real service over an installation of its own, in the practice storm, with the clock set by hand: its feeds, desk,
/// store, letters (as files) and pages. Moving the clock takes every turn that is due, as a rehearsal does.
/// </summary>
internal sealed class ServedStorm : IAsyncDisposable
{
    private static readonly Duration ListenEvery = Duration.FromMinutes(30);

    /// <summary>By the real clock: a turn that takes longer has failed.</summary>
    private static readonly TimeSpan LongestTurn = TimeSpan.FromMinutes(2);

    /// <summary>Stands in letters for the address that phones reach; <see cref="At"/> puts the real one in its place.</summary>
    private static readonly Uri PhonesAddress = new("http://stormclock.invalid");

    private static readonly Lazy<IReadOnlyList<(Instant Issued, RawMessage Raw)>> Storm = new(ReadStorm);

    private readonly Installed installed;
    private readonly FakeTimeProvider time;
    private readonly WebApplication host;

    private ServedStorm(Installed installed, FakeTimeProvider time, WebApplication host, StormStore store)
    {
        this.installed = installed;
        this.time = time;
        this.host = host;
        Store = store;
    }

    public StormStore Store { get; }

    public IServiceProvider Services => host.Services;

    /// <summary>Of the pages, on this machine.</summary>
    public Uri BaseAddress => new(host.Urls.Single());

    /// <summary>With <c>gardens/</c>, as <c>--config</c> names it.</summary>
    public string ConfigFolder => installed.Config;

    public string DataFolder => installed.Data;

    public Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    private Heartbeat Heartbeat => Services.GetRequiredService<Heartbeat>();

    /// <summary>Letters sent so far, oldest first.</summary>
    public IReadOnlyList<OutboxEntry> Mails =>
    [
        .. Services.GetRequiredService<GardenShelf>().Books.SelectMany(book => Store.Read(reader => OutboxTable.OfGarden(reader, book.Id)))
            .Where(entry => entry.State == OutboxState.Sent)
            .OrderBy(entry => entry.Settled),
    ];

    /// <summary>What has been said of jobs in the episode that the letters are of.</summary>
    public IReadOnlyList<JobState> Answers(string gardenId)
    {
        // The second part of a reminder key is its episode.
        var episode = Mails.Last(mail => mail.GardenId == gardenId).Key.Split('|')[1];
        return Store.Read(reader => JobStates.OfEpisode(reader, gardenId, episode));
    }

    /// <summary>Starts at a time, with whatever of the storm had been issued by then, and takes the first turn.</summary>
    public static async Task<ServedStorm> StartAsync(Instant begin, Installing? how = null)
    {
        how ??= new();
        var installed = new Installed(how);
        var time = new FakeTimeProvider(begin.ToDateTimeOffset());
        var store = StormStore.Open(installed.Data);
        var plan = new HostPlan(
            installed.Data, new GardenShelf(installed.Gardens), clock => [new ReplayFeed(Storm.Value, clock), new FolderFeed(FeedsReader.Notes, installed.Notes)],
            new EmlChannel(installed.Letters, new("StormClock", "stormclock@stormclock.invalid")), time, new("http://127.0.0.1:0"),
            how.PhonesReachPages ? PhonesAddress : null, ListenEvery, begin, LinksPerMinute: int.MaxValue, how.Practice)
        {
            Push = how.PhonesReachPages ? new("mailto:keeper@example.org", AllowLoopback: true) : null,
        };
        var host = Composition.Build(plan, store);
        var storm = new ServedStorm(installed, time, host, store);
        await host.StartAsync();
        await storm.HearAsync(1);
        return storm;
    }

    /// <summary>Moves the clock from one wake-up to the next until a time, and waits for the end of every turn on the way.</summary>
    public async Task AdvanceToAsync(Instant at)
    {
        var scheduler = await Services.GetRequiredService<ISchedulerFactory>().GetScheduler();
        while (true)
        {
            var (next, turns) = await NextTurnAsync(scheduler);
            if (next > at) break;
            var beats = Heartbeat.Count + turns;
            Move(next);
            await HearAsync(beats);
        }

        Move(at);
    }

    /// <summary>Everybody is told to leave by a time; it is heard in the next turn.</summary>
    public void NoteLeaveBy(string gardenId, Instant by) =>
        Assert.True(NoteFolder.Keep(installed.Notes, new LeaveByNote(gardenId, "the keeper", Now, by)));

    /// <summary>A page of this service: a path, or an address as it stands in a letter.</summary>
    public Uri At(string address) => Uri.TryCreate(address, UriKind.Absolute, out var whole) && whole.Scheme != "file"
        ? new(BaseAddress, whole.PathAndQuery)
        : new(BaseAddress, address);

    public async ValueTask DisposeAsync()
    {
        await host.StopAsync();
        await host.DisposeAsync();
        Store.Dispose();
        installed.Dispose();
    }

    private void Move(Instant to)
    {
        if (to > Now) time.Advance((to - Now).ToTimeSpan());
    }

    private async Task HearAsync(long beats)
    {
        await Heartbeat.ReachAsync(beats).WaitAsync(LongestTurn);
        Assert.Null(Heartbeat.Fault);
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

    private static List<(Instant Issued, RawMessage Raw)> ReadStorm() =>
    [
        .. Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice", "storm")).Where(file => Path.GetExtension(file) is ".txt" or ".xml")
            .Select(file => new RawMessage(Path.GetFileName(file), File.ReadAllBytes(file)))
            .Select(raw => (MessageReader.Read(raw.Bytes).Value!.Issued, raw))
            .OrderBy(message => message.Issued),
    ];
}
