namespace StormClock.Service.Feeds;

/// <summary>A recorded storm: each message becomes visible when the clock reaches its issue time.</summary>
public sealed class ReplayFeed(IReadOnlyList<(Instant Issued, RawMessage Message)> recorded, IClock clock) : IFeed
{
    private int shown;

    public string Name => "recorded storm";

    public Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var fresh = recorded.Skip(shown).TakeWhile(entry => entry.Issued <= now).Select(entry => entry.Message).ToList();
        shown += fresh.Count;
        return Task.FromResult(new FeedAnswer(fresh));
    }
}
