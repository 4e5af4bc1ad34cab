namespace StormClock.Service.Feeds;

/// <summary>A recorded storm: each message becomes visible when the clock reaches the time at which it was, or would have been, heard.</summary>
public sealed class ReplayFeed(IReadOnlyList<(Instant HeardAt, RawMessage Message)> recorded, IClock clock) : IFeed
{
    private int taken;

    public string Name => "recorded storm";

    public Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        return Task.FromResult(new FeedAnswer([.. recorded.Skip(taken).TakeWhile(entry => entry.HeardAt <= now).Select(entry => entry.Message)]));
    }

    public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation)
    {
        taken++;
        return Task.CompletedTask;
    }
}
