using System.Collections.Immutable;
using StormClock.Core.Reminders;
using StormClock.Service.Store;

namespace StormClock.Service.Feeds.Health;

/// <summary>How every source is doing, kept in the store so that a restart knows it.</summary>
public sealed class FeedWatch
{
    /// <summary>A good answer alone is written down no more often than this, to spare the disk.</summary>
    private static readonly Duration WriteEvery = Duration.FromMinutes(10);

    private readonly StormStore store;
    private readonly IReadOnlyList<IFeed> feeds;
    private IReadOnlyDictionary<string, FeedHealth> now;
    private Dictionary<string, FeedHealth> kept;
    private ImmutableHashSet<string> signedUnchecked = [];

    /// <param name="feeds">The sources in the order of the settings; what is known of others is of no interest.</param>
    public FeedWatch(StormStore store, IReadOnlyList<IFeed> feeds)
    {
        this.store = store;
        this.feeds = feeds;
        kept = store.Read(FeedStates.All).ToDictionary(health => health.Name);
        now = kept;
    }

    /// <summary>In the order of the settings; sources that have not been looked at yet are left out.</summary>
    public IReadOnlyList<(IFeed Feed, FeedHealth Health)> All =>
        [.. feeds.Where(feed => now.ContainsKey(feed.Name)).Select(feed => (feed, now[feed.Name]))];

    /// <summary>Notes what a look at a source came to.</summary>
    /// <param name="understood">How many of its messages could be read.</param>
    /// <param name="issued">Issue time of the newest of them.</param>
    /// <param name="unread">Why one could not be read; null when all could.</param>
    public void Note(IFeed feed, FeedAnswer answer, int understood, Instant? issued, string? unread, Instant at)
    {
        var before = now.GetValueOrDefault(feed.Name) ?? new FeedHealth(feed.Name, at);
        var heard = answer.IsHeard && (answer.Messages.Count == 0 || understood > 0);
        var changed = answer.ContentMark is { } mark ? mark != before.ContentMark : answer.Messages.Count > 0;
        var trouble = answer.Trouble ?? unread;
        var after = heard ? before.Heard(at, changed, answer.ContentMark, issued, trouble) : before.Failed(at, trouble ?? "no reason was given");
        now = new Dictionary<string, FeedHealth>(now) { [feed.Name] = after };
    }

    /// <summary>A message of this source was signed, and nobody could check it.</summary>
    public void NoteUnchecked(string feed) => signedUnchecked = signedUnchecked.Add(feed);

    /// <summary>Since the service began.</summary>
    public bool HasUnchecked(string feed) => signedUnchecked.Contains(feed);

    public async Task SaveAsync(CancellationToken cancellation)
    {
        var news = now.Values.Where(health => IsWorthWriting(kept.GetValueOrDefault(health.Name), health)).ToList();
        if (news.Count == 0) return;
        await store.WriteAsync(
            transaction =>
            {
                foreach (var health in news) FeedStates.Put(transaction, health);
            },
            cancellation);
        kept = new(now);
    }

    /// <summary>Spells of silence longer than their source's pace allows, those that are over too.</summary>
    public IReadOnlyList<SourceSilence> Silences(Instant at) =>
    [
        .. All.Where(source => source.Health.IsDeaf(at, source.Feed.Pace.DeafAfter)).Select(source => new SourceSilence(source.Feed.Name, source.Health.Since, null)),
        .. All.Where(source => source.Health.LastSpell is { } spell && spell.Again - spell.Since > source.Feed.Pace.DeafAfter)
            .Select(source => new SourceSilence(source.Feed.Name, source.Health.LastSpell!.Since, source.Health.LastSpell.Again)),
    ];

    private static bool IsWorthWriting(FeedHealth? before, FeedHealth after) =>
        before is null || (after != before && (after with { LastGood = before.LastGood } != before || after.LastGood - before.LastGood >= WriteEvery));
}
