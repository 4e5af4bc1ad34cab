using StormClock.Service.Feeds.Signatures;

namespace StormClock.Service.Feeds.Web;

/// <summary>One address that answers with one message.</summary>
public sealed class MessageFeed(FeedSource source, Uri at, FeedClient client) : IFeed
{
    private Validators? known;
    private Validators? shown;

    public string Name => source.Name;

    public FeedPace Pace => source.Pace;

    public Duration? StaleAfter => source.StaleAfter;

    public FeedSigners? Signers => source.Signers;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var fetched = await client.GetAsync(source, at, at, known, cancellation);
        if (fetched.State == FetchState.Unchanged) return new([]);
        if (fetched.State != FetchState.Good) return new([], fetched.Trouble) { NotBefore = fetched.NotBefore };
        shown = fetched.Validators;
        return new([new(at.AbsoluteUri, fetched.Body)]) { ContentMark = Feeds.ContentMark.Of(fetched.Body.Span) };
    }

    /// <summary>Only what has been understood and kept need not be given again.</summary>
    public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation)
    {
        known = understood ? shown : null;
        return Task.CompletedTask;
    }
}
