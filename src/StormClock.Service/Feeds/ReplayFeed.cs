namespace StormClock.Service.Feeds;

/// <summary>A recorded storm: each message becomes visible when the clock reaches its issue time.</summary>
public sealed class ReplayFeed(IReadOnlyList<(Instant Issued, RawMessage Message)> recorded, IClock clock) : IFeed
{
    private int taken;

    public string Name => "recorded storm";

    public Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        return Task.FromResult(new FeedAnswer([.. recorded.Skip(taken).TakeWhile(entry => entry.Issued <= now).Select(entry => entry.Message)]));
    }

    public void Took(RawMessage message) => taken++;
}
