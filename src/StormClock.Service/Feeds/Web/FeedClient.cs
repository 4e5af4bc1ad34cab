using System.Collections.Concurrent;
using Polly;
using Polly.CircuitBreaker;
using Polly.Retry;
using Polly.Timeout;
using StormClock.Service.Feeds.Recording;

namespace StormClock.Service.Feeds.Web;

/// <summary>
/// Asks addresses for their content: each try with its own time, further tries with growing pauses, a pause for a host that
/// keeps failing, redirects by our rules. Whatever happens comes back as a value.
/// </summary>
/// <param name="recorder">Keeps every raw answer; null for none.</param>
public sealed class FeedClient(HttpClient http, TimeProvider time, FetchLimits limits, AnswerRecorder? recorder = null)
{
    private readonly ConcurrentDictionary<string, ResiliencePipeline<Fetched>> hosts = new(StringComparer.OrdinalIgnoreCase);

    public FetchLimits Limits => limits;

    /// <param name="from">The address in the settings, whose host sets the rules.</param>
    /// <param name="known">Marks of the answer already had; null to be given the whole in any case.</param>
    public Task<Fetched> GetAsync(FeedSource source, Uri from, Uri at, Validators? known, CancellationToken cancellation) =>
        GetAsync(new(source, from, at, known, limits.MostBytes), cancellation);

    /// <summary>The same for a list, which may be larger.</summary>
    public Task<Fetched> GetListAsync(FeedSource source, Uri at, Validators? known, CancellationToken cancellation) =>
        GetAsync(new(source, at, at, known, limits.MostListBytes), cancellation);

    private sealed record Wanted(FeedSource Source, Uri From, Uri At, Validators? Known, int MostBytes);

    private async Task<Fetched> GetAsync(Wanted wanted, CancellationToken cancellation)
    {
        using var whole = new CancellationTokenSource(limits.Whole, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(whole.Token, cancellation);
        try
        {
            return await HostOf(wanted.At).ExecuteAsync(async token => await TryAsync(wanted, token), either.Token);
        }
        catch (BrokenCircuitException broken)
        {
            return FetchFaults.Of(broken);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return Fetched.Fails("it did not answer in time", passing: true);
        }
    }

    private ResiliencePipeline<Fetched> HostOf(Uri at) => hosts.GetOrAdd(at.Authority, _ => new ResiliencePipelineBuilder<Fetched> { TimeProvider = time }
        .AddRetry(new RetryStrategyOptions<Fetched>
        {
            ShouldHandle = tried => ValueTask.FromResult(tried.Outcome.Result is { IsPassing: true } result && !(PauseOf(result) > limits.LongestPause)),
            MaxRetryAttempts = limits.Retries,
            Delay = limits.RetryDelay,
            BackoffType = DelayBackoffType.Exponential,
            UseJitter = true,
            DelayGenerator = tried => ValueTask.FromResult(tried.Outcome.Result is { } result ? PauseOf(result) : null),
        })
        .AddCircuitBreaker(new CircuitBreakerStrategyOptions<Fetched>
        {
            ShouldHandle = tried => ValueTask.FromResult(tried.Outcome.Result is { IsHostFault: true }),
            FailureRatio = 0.9,
            MinimumThroughput = limits.BreakAfter,
            SamplingDuration = limits.Break,
            BreakDuration = limits.Break,
        })
        .Build());

    /// <summary>One try. Its own time is kept inside the value, so that the strategies around it see outcomes only.</summary>
    private async Task<Fetched> TryAsync(Wanted wanted, CancellationToken cancellation)
    {
        var timeout = new ResiliencePipelineBuilder { TimeProvider = time }.AddTimeout(limits.Attempt).Build();
        try
        {
            return await timeout.ExecuteAsync(async token => await FollowAsync(wanted, token), cancellation);
        }
        catch (Exception fault) when (FetchFaults.Is(fault))
        {
            var fetched = FetchFaults.Of(fault);
            await KeepAsync(new(wanted.Source.Name, wanted.At.AbsoluteUri) { Trouble = fetched.Trouble });
            return fetched;
        }
    }

    private async Task<Fetched> FollowAsync(Wanted wanted, CancellationToken cancellation)
    {
        var (source, from, at, known, mostBytes) = wanted;
        for (var hops = 0; ; hops++)
        {
            using var request = FeedRequest.Make(source, at, known);
            using var answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
            var body = await BoundedBody.ReadAsync(answer.Content, mostBytes, cancellation);
            await KeepAsync(new(source.Name, at.AbsoluteUri) { Status = (int)answer.StatusCode, Headers = FeedRequest.HeadersOf(answer), Body = body });
            if (FeedRequest.RedirectOf(answer, at) is not { } next) return FetchVerdict.Of(answer, body, known, Instant.FromDateTimeOffset(time.GetUtcNow()), mostBytes, limits.LongestAsked);
            if (source.Refusal(from, next) is { } refusal) return Fetched.Fails($"a redirect {refusal}");
            if (hops == limits.MostRedirects) return Fetched.Fails($"it redirects more than {limits.MostRedirects} times");
            at = next;
        }
    }

    private Task KeepAsync(RecordedAnswer answer) => recorder?.KeepAsync(answer) ?? Task.CompletedTask;

    /// <summary>How long the server asks to be left alone from now; null when it does not.</summary>
    private TimeSpan? PauseOf(Fetched fetched)
    {
        if (fetched.NotBefore is not { } until) return null;
        var pause = until - Instant.FromDateTimeOffset(time.GetUtcNow());
        return pause > Duration.Zero ? pause.ToTimeSpan() : TimeSpan.Zero;
    }
}
