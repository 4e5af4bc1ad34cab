using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace StormClock.Service.Feeds;

/// <summary>One public address that answers with one message.</summary>
public sealed class UrlFeed : IFeed
{
    private const int MostBytes = 4 * 1024 * 1024;
    private readonly HttpClient client;
    private readonly Uri address;
    private readonly ResiliencePipeline pipeline;

    /// <param name="client">Decompressing, with a User-Agent, not following redirects to other schemes.</param>
    public UrlFeed(string name, Uri address, HttpClient client, TimeProvider time)
    {
        Name = name;
        this.address = address;
        this.client = client;
        pipeline = new ResiliencePipelineBuilder { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions
            {
                ShouldHandle = new PredicateBuilder().Handle<HttpRequestException>().Handle<TimeoutRejectedException>(),
                MaxRetryAttempts = 2,
                Delay = TimeSpan.FromSeconds(2),
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
            })
            .AddTimeout(TimeSpan.FromSeconds(20))
            .Build();
    }

    public string Name { get; }

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        try
        {
            var bytes = await pipeline.ExecuteAsync(async token => await GetAsync(token), cancellation);
            return bytes.Length > MostBytes
                ? new([], $"answer larger than {MostBytes} bytes, not read")
                : new([new(address.AbsoluteUri, bytes)]);
        }
        catch (Exception trouble) when (trouble is HttpRequestException or TimeoutRejectedException or IOException)
        {
            return new([], trouble.Message);
        }
    }

    /// <summary>The address shows its message for as long as it stands.</summary>
    public void Took(RawMessage message)
    {
    }

    /// <summary>Reads one byte more than allowed at most, so that a size over the cap shows.</summary>
    private async Task<byte[]> GetAsync(CancellationToken cancellation)
    {
        using var answer = await client.GetAsync(address, HttpCompletionOption.ResponseHeadersRead, cancellation);
        answer.EnsureSuccessStatusCode();
        await using var body = await answer.Content.ReadAsStreamAsync(cancellation);
        using var kept = new MemoryStream();
        var buffer = new byte[64 * 1024];
        while (kept.Length <= MostBytes && await body.ReadAsync(buffer, cancellation) is var read and > 0) kept.Write(buffer, 0, read);
        return kept.ToArray();
    }
}
