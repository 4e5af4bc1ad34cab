using StormClock.Service.Feeds.Signatures;

namespace StormClock.Service.Feeds;

/// <summary>One message as it was found, unread.</summary>
/// <param name="Name">File name or address, for reports.</param>
public sealed record RawMessage(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>What one look at a source brought.</summary>
/// <param name="Trouble">Why nothing, or not everything, could be had; null when all went well.</param>
public sealed record FeedAnswer(IReadOnlyList<RawMessage> Messages, string? Trouble = null)
{
    /// <summary>The source itself answered, though a part of what it names may be missing.</summary>
    public bool IsHeard { get; init; } = Trouble is null;

    /// <summary>Differs when what the source shows has changed; null when it has not, or only the messages tell.</summary>
    public string? ContentMark { get; init; }

    /// <summary>The source asks not to be looked at again before this.</summary>
    public Instant? NotBefore { get; init; }

    /// <summary>More is waiting there than one look may take; look again soon.</summary>
    public bool HasMore { get; init; }
}

/// <summary>A source of messages: a folder, an address, or a recorded storm.</summary>
public interface IFeed
{
    /// <summary>Name shown with everything heard from it.</summary>
    string Name { get; }

    /// <summary>How often it may be looked at.</summary>
    FeedPace Pace => FeedPace.Always;

    /// <summary>Content older than this is stale though the source answers; null where old content is nothing odd.</summary>
    Duration? StaleAfter => null;

    /// <summary>Who must have signed its messages; null where that is not asked.</summary>
    FeedSigners? Signers => null;

    /// <summary>
    /// Brings alerts for other places too, of which only those that may concern a garden are kept. Such a source shows everything
    /// again when the places change.
    /// </summary>
    bool IsWide => false;

    /// <summary>Everything new that the source shows now; trouble is a value, not an exception.</summary>
    Task<FeedAnswer> FetchAsync(CancellationToken cancellation);

    /// <summary>The message has been dealt with for good and need not be shown again; until then it may be.</summary>
    /// <param name="understood">False where it could not be read: told, and not to be taken for known after a restart.</param>
    Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation);
}
