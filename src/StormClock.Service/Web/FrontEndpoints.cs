using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views;
using StormClock.Service.Wording;

namespace StormClock.Service.Web;

/// <summary>The front page and the state of health.</summary>
internal static class FrontEndpoints
{
    public static async Task<RazorComponentResult<FrontView>> ShowAsync(HttpContext context, IJobBook book, IClock clock)
    {
        var (request, visitor, now) = (context.Request, Doorkeeper.Of(context), clock.GetCurrentInstant());
        var page = await book.NowAsync(visitor, now);
        return new RazorComponentResult<FrontView>(new Dictionary<string, object?>
        {
            [nameof(FrontView.Page)] = page,
            [nameof(FrontView.Speech)] = SpeechOf(page) ?? BrowserSpeech.Of(request),
            [nameof(FrontView.Now)] = now,
            [nameof(FrontView.Visitor)] = visitor,
            [nameof(FrontView.IsKeeper)] = page.IsForKeeper,
            [nameof(FrontView.IsPrivate)] = visitor.Kind == VisitorKind.AtTheBox,
        });
    }

    /// <summary>That of the gardens where they share one.</summary>
    private static Speech? SpeechOf(NowPage page) =>
        page.Gardens.Select(garden => garden.Speech.Language).Distinct().Count() == 1 ? page.Gardens[0].Speech : null;

    /// <summary>JSON; 503 when something needs the keeper, so that a simple watcher need not read it.</summary>
    public static async Task<IResult> HealthAsync(IJobBook book, IClock clock)
    {
        var now = clock.GetCurrentInstant();
        var health = await book.HealthAsync(now);
        return TypedResults.Json(
            new
            {
                good = health.Good,
                now = $"{now}",
                oldestUnsentSeconds = health.OldestUnsent?.TotalSeconds,
                channels = health.Channels.Select(channel => new { name = channel.Name, waiting = channel.Waiting, parked = channel.Parked }),
                replies = health.Replies is { } replies
                    ? new { lastGood = replies.LastGood?.ToString(), lastError = replies.LastError, lastErrorAt = replies.LastErrorAt?.ToString(), failures = replies.Failures }
                    : null,
                feeds = health.Feeds.Select(feed => new
                {
                    name = feed.Name,
                    lastContent = feed.LastContent?.ToString(),
                    ageSeconds = (now - feed.LastContent)?.TotalSeconds,
                    lastGood = feed.LastGood?.ToString(),
                    lastChange = feed.LastChange?.ToString(),
                    lastError = feed.LastError,
                    lastErrorAt = feed.LastErrorAt?.ToString(),
                    failures = feed.Failures,
                    stale = feed.Stale,
                    deaf = feed.Deaf,
                    signatures = feed.Signatures,
                }),
            },
            statusCode: health.Good ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }
}
