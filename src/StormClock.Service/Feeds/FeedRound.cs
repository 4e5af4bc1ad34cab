namespace StormClock.Service.Feeds;

/// <summary>
/// Looks at the sources that are due, all at once and each with its own time. Whoever is slow is not waited for: what it brings
/// is taken at the next turn, and nobody else is held up by it.
/// </summary>
public sealed class FeedRound(IReadOnlyList<IFeed> feeds, TimeProvider time) : IDisposable
{
    /// <summary>How long a turn waits for the slowest.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(5);

    /// <summary>A source that takes longer has failed, whatever it may still bring.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(3);

    /// <summary>Turns come by the second, not to it: without this a look would be put off by a whole turn because it came a moment early.</summary>
    private static readonly Duration Early = Duration.FromSeconds(1);

    private readonly List<Source> sources = [.. feeds.Select(feed => new Source(feed))];
    private readonly CancellationTokenSource stop = new();

    /// <summary>The answers that have come, in the order of the settings.</summary>
    /// <param name="storm">A stage above Nothing due holds in some garden.</param>
    public async Task<IReadOnlyList<(IFeed Feed, FeedAnswer Answer)>> AskAsync(bool storm, CancellationToken cancellation)
    {
        var now = Instant.FromDateTimeOffset(time.GetUtcNow());
        foreach (var source in sources.Where(source => source.IsDue(now, storm))) source.Begin(now, LookAsync(source));

        using var grace = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        await Task.WhenAny(Task.WhenAll(sources.Select(source => source.Running ?? Task.FromResult(new FeedAnswer([])))), Task.Delay(Grace, time, grace.Token));
        await grace.CancelAsync();
        cancellation.ThrowIfCancellationRequested();
        return [.. sources.Where(source => source.Running is { IsCompleted: true }).Select(source => (source.Feed, source.End()))];
    }

    public void Dispose()
    {
        stop.Cancel();
        stop.Dispose();
    }

    /// <summary>Never fails: a source that throws is one more that could not be heard, and silences no other.</summary>
    private async Task<FeedAnswer> LookAsync(Source source)
    {
        if (source.Stuck is { IsCompleted: false }) return new([], "the last look at it has not come back");
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(stop.Token);
        var token = enough.Token;
        try
        {
            var look = Task.Run(() => source.Feed.FetchAsync(token), token);
            source.Stuck = look;
            return await look.WaitAsync(Longest, time, token);
        }
        catch (TimeoutException)
        {
            await enough.CancelAsync();
            return new([], "it did not answer in time");
        }
        catch (Exception fault)
        {
            return new([], $"the look at it failed: {fault.Message}");
        }
    }

    private sealed class Source(IFeed feed)
    {
        private Instant asked = Instant.MinValue;
        private Instant notBefore = Instant.MinValue;
        private bool hasMore;

        public IFeed Feed => feed;

        public Task<FeedAnswer>? Running { get; private set; }

        /// <summary>The look itself, which may outlive the time given to it.</summary>
        public Task? Stuck { get; set; }

        /// <summary>Where the last look lies ahead, the clock was set back and nothing that it told of times holds.</summary>
        public bool IsDue(Instant now, bool storm) =>
            Running is null && (now < asked || (now >= notBefore && (hasMore || asked == Instant.MinValue || now - asked >= feed.Pace.Between(storm) - Early)));

        public void Begin(Instant now, Task<FeedAnswer> look)
        {
            asked = now;
            Running = look;
        }

        public FeedAnswer End()
        {
            var answer = Running!.Result;
            Running = null;
            hasMore = answer.HasMore;
            notBefore = answer.NotBefore ?? Instant.MinValue;
            return answer;
        }
    }
}
