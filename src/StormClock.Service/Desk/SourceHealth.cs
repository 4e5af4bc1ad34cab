using StormClock.Service.Feeds.Health;
using StormClock.Service.Web;

namespace StormClock.Service.Desk;

/// <summary>How the sources are doing, as the pages show it.</summary>
internal static class SourceHealth
{
    public static IEnumerable<FeedNow> Of(FeedWatch watch, Instant now) => watch.All.Select(source => new FeedNow(source.Feed.Name, source.Health.NewestIssued)
    {
        LastGood = source.Health.LastGood,
        LastChange = source.Health.LastChange,
        LastError = source.Health.LastError,
        LastErrorAt = source.Health.LastErrorAt,
        Failures = source.Health.Failures,
        Signatures = source.Feed.Signers is not null ? "checked" : watch.HasUnchecked(source.Feed.Name) ? "not checked" : null,
        Stale = source.Health.IsStale(now, source.Feed.StaleAfter),
        Deaf = source.Health.IsDeaf(now, source.Feed.Pace.DeafAfter),
    });

    /// <summary>Old content is nothing odd in quiet weeks; in a storm it needs the keeper as much as a deaf source does.</summary>
    public static bool IsGood(FeedWatch watch, bool storm, Instant now) => !Of(watch, now).Any(feed => feed.Deaf || (storm && feed.Stale));

    /// <summary>A sentence for each source that is deaf or stale; never left out (product.md 7.3).</summary>
    public static IEnumerable<string> Troubles(FeedWatch watch, Instant now)
    {
        foreach (var (feed, health) in watch.All)
        {
            if (health.IsDeaf(now, feed.Pace.DeafAfter))
                yield return $"The source \"{feed.Name}\" has not been heard since {Utc(health.Since)}: {health.LastError}. Silence is no good news: look at the official sources.";
            else if (health.IsStale(now, feed.StaleAfter))
                yield return $"The source \"{feed.Name}\" answers, but with content of {Utc(health.ContentFrom!.Value)}. While no storm is near that may be all there is; otherwise look at the official sources.";
        }
    }

    private static string Utc(Instant at) => $"{at:uuuu-MM-dd HH:mm} UTC";
}
