namespace StormClock.Service.Feeds;

/// <summary>One message as it was found, unread.</summary>
/// <param name="Name">File name or address, for reports.</param>
public sealed record RawMessage(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>What one look at a source brought.</summary>
/// <param name="Trouble">Why nothing, or not everything, could be had; null when all went well.</param>
public sealed record FeedAnswer(IReadOnlyList<RawMessage> Messages, string? Trouble = null);

/// <summary>A source of messages: a folder, an address, or a recorded storm.</summary>
public interface IFeed
{
    /// <summary>Name shown with everything heard from it.</summary>
    string Name { get; }

    /// <summary>Everything the source shows now; trouble is a value, not an exception.</summary>
    Task<FeedAnswer> FetchAsync(CancellationToken cancellation);

    /// <summary>The message has been dealt with for good and need not be shown again; until then it may be.</summary>
    void Took(RawMessage message);
}
