using System.Text.Json;

namespace StormClock.Service.Feeds.Web;

/// <summary>
/// An address that does not carry the message but names, in a JSON property, the address that does. What it named is asked
/// again once a day, and whenever the message cannot be had there.
/// </summary>
/// <param name="path">Names of properties, the outermost first.</param>
public sealed class FollowedFeed(FeedSource source, Uri at, IReadOnlyList<string> path, FeedClient client, IClock clock) : IFeed
{
    private static readonly Duration GoodFor = Duration.FromDays(1);

    private MessageFeed? inner;
    private Instant until;

    public string Name => source.Name;

    public FeedPace Pace => source.Pace;

    public Duration? StaleAfter => source.StaleAfter;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (inner is null || now >= until)
        {
            var fetched = await client.GetAsync(source, at, at, null, cancellation);
            if (fetched.State != FetchState.Good) return new([], fetched.Trouble) { NotBefore = fetched.NotBefore };
            if (Named(fetched.Body) is not { } address) return new([], $"the answer of {at} does not name an address under {string.Join('/', path)}");
            if (source.Refusal(at, address) is { } refusal) return new([], $"the address named by {at} {refusal}");
            inner = new(source, address, client);
            until = now + GoodFor;
        }

        var answer = await inner.FetchAsync(cancellation);
        if (!answer.IsHeard) until = now;
        return answer;
    }

    public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation) => inner?.TookAsync(message, understood, cancellation) ?? Task.CompletedTask;

    private Uri? Named(ReadOnlyMemory<byte> body)
    {
        try
        {
            using var json = JsonDocument.Parse(body);
            var found = json.RootElement;
            foreach (var name in path)
            {
                if (found.ValueKind != JsonValueKind.Object || !found.TryGetProperty(name, out found)) return null;
            }

            return found.ValueKind == JsonValueKind.String && Uri.TryCreate(found.GetString(), UriKind.Absolute, out var address) ? address : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
