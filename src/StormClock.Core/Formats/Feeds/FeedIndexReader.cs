namespace StormClock.Core.Formats.Feeds;

/// <summary>
/// Reads the lists in which offices publish their messages: Atom, RSS 2.0, an EDXL-DE envelope, the cyclone centre's list
/// of current storms and the weather service's list of alerts (both JSON).
/// </summary>
public static class FeedIndexReader
{
    /// <summary>Larger lists are refused unread. The largest real one at hand has 1.8 MB; a bad national day may bring 15.</summary>
    public const int MostBytes = 32 * 1024 * 1024;

    /// <summary>A list of more entries is refused whole, because one cut short would read like a quiet day.</summary>
    public const int MostEntries = 20_000;

    /// <summary>Whether the bytes begin like such a list. What is inside may still be at fault.</summary>
    public static bool IsList(ReadOnlySpan<byte> bytes) => ListKinds.Of(bytes) != ListKind.None;

    /// <summary>The whole list in its own order. A list without entries is good.</summary>
    public static ReadResult<FeedIndex> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes) return new ReadFault("the file", $"is larger than {MostBytes / 1024 / 1024} MB; such a list is not read", 1);

        var result = ListKinds.Of(bytes.Span) switch
        {
            ListKind.Xml => XmlList.Read(bytes),
            ListKind.Storms => StormList.Read(bytes),
            ListKind.Alerts => AlertList.Read(bytes),
            _ => ReadFault.At(1, $"this is {KnownProduct.NameOf(KnownProduct.Of(bytes.Span))}, not a list of messages; Atom, RSS, EDXL-DE and two lists in JSON can be read"),
        };
        return result.Value is { } list && list.Entries.Count > MostEntries ? TooMany() : result;
    }

    internal static ReadFault TooMany() => new("the list", $"has more than {MostEntries} entries; such a list is not read", 1);
}
