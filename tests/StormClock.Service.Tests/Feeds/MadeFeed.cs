using StormClock.Service.Feeds;

namespace StormClock.Service.Tests.Feeds;

/// <summary>A source that answers as a test says and counts the looks.</summary>
internal sealed class MadeFeed(string name, Func<CancellationToken, Task<FeedAnswer>> answer, FeedPace? pace = null) : IFeed
{
    public string Name => name;

    public FeedPace Pace => pace ?? FeedPace.Usual;

    public Duration? StaleAfter => Duration.FromHours(9);

    public int Looks { get; private set; }

    /// <summary>Completes when the first look has begun.</summary>
    public TaskCompletionSource Begun { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        Looks++;
        Begun.TrySetResult();
        return answer(cancellation);
    }

    public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation) => Task.CompletedTask;
}
