namespace StormClock.Service.Feeds;

/// <summary>Looks at a feed no more often than its pace, however often it is asked.</summary>
public sealed class PacedFeed(IFeed feed, Duration every, IClock clock) : IFeed
{
    private Instant next = Instant.MinValue;

    public string Name => feed.Name;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (now < next) return new([]);
        next = now + every;
        return await feed.FetchAsync(cancellation);
    }

    public void Took(RawMessage message) => feed.Took(message);
}
