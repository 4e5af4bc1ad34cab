using Microsoft.Extensions.Time.Testing;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Feeds.Web;
using StormClock.Service.Store;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Feeds;

/// <summary>Round, inbox and watch over a store of their own, with a clock set by hand; only the net is real.</summary>
internal sealed class Listener : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly FeedRound round;

    public Listener(Func<Listener, IReadOnlyList<IFeed>> feeds, GardenShelf? gardens = null)
    {
        Gardens = gardens ?? new([]);
        Store = StormStore.Open(folder.Path);
        Feeds = feeds(this);
        Watch = new(Store, Feeds);
        Inbox = new(Store, new ProviderClock(Time), new Journal(), Watch, new(Gardens), practice: true);
        round = new(Feeds, Time);
    }

    /// <summary>Begins at the true time, because servers' pauses are reckoned by it.</summary>
    public FakeTimeProvider Time { get; } = new(TimeProvider.System.GetUtcNow());

    /// <summary>Nobody's, so that everything is kept, unless a test puts one there.</summary>
    public GardenShelf Gardens { get; }

    public StormStore Store { get; }

    public IReadOnlyList<IFeed> Feeds { get; }

    public FeedWatch Watch { get; }

    public Inbox Inbox { get; }

    public Instant Now => Instant.FromDateTimeOffset(Time.GetUtcNow());

    public FeedHealth Health(string feed) => Watch.All.Single(source => source.Feed.Name == feed).Health;

    /// <summary>Names of the sources from which each message kept was heard.</summary>
    public IReadOnlyList<string> Heard => [.. Store.Read(StormClock.Service.Store.Advisories.All).Select(heard => heard.Source)];

    public static FeedSource Source(string name, params string[] hosts) => new(name, FeedPace.Usual, hosts, "keeper@example.org", null);

    /// <summary>Hardly pauses between tries; one try may take so long.</summary>
    public static FeedClient Client(double attemptSeconds = 30, Func<FetchLimits, FetchLimits>? change = null)
    {
        var limits = FetchLimits.Usual with { Attempt = TimeSpan.FromSeconds(attemptSeconds), Whole = TimeSpan.FromMinutes(2), RetryDelay = TimeSpan.FromMilliseconds(1), BreakAfter = 1000 };
        return new(FeedHttp.Make(), TimeProvider.System, change?.Invoke(limits) ?? limits);
    }

    /// <summary>A message of the practice storm.</summary>
    public static byte[] Message(int number) => File.ReadAllBytes(Path.Combine(ConfigFiles.Folder, "practice", "storm", $"{number:000}.txt"));

    public async Task ListenAsync(bool storm = true)
    {
        var cancellation = TestContext.Current.CancellationToken;
        await Inbox.TakeInAsync(await round.AskAsync(storm, cancellation), cancellation);
    }

    public void Dispose()
    {
        round.Dispose();
        Store.Dispose();
        folder.Dispose();
    }
}
