namespace StormClock.Service.Feeds.Recording;

/// <summary>One answer as it came, or why none came.</summary>
/// <param name="Feed">Name of the feed.</param>
/// <param name="Address">Address asked, or path of a file.</param>
public sealed record RecordedAnswer(string Feed, string Address)
{
    /// <summary>HTTP status; null for a file, and where no answer came.</summary>
    public int? Status { get; init; }

    public IReadOnlyDictionary<string, string> Headers { get; init; } = new Dictionary<string, string>();

    /// <summary>After decompression; null where there was none, or more than is read.</summary>
    public ReadOnlyMemory<byte>? Body { get; init; }

    public string? Trouble { get; init; }
}
