using System.Security.Cryptography;
using System.Text;

namespace StormClock.Core.Acknowledgements;

/// <summary>
/// What makes a letter's Message-ID ours: the letter's id and a keyed mark of it. A mail program puts it into every reply by
/// itself, and nobody who has not seen the letter can make it. Written in lower-case hexadecimal, which no mail server changes.
/// </summary>
public static class ReplyProof
{
    /// <summary>Half of HMAC-SHA256, the least that RFC 2104 section 5 advises; bytes.</summary>
    private const int MacLength = HMACSHA256.HashSizeInBytes / 2;

    /// <summary>An id and a mark are far shorter; longer text is refused unread.</summary>
    private const int LongestText = 256;

    /// <summary>Keeps these marks apart from the signatures of links, which the same keys make.</summary>
    private static ReadOnlySpan<byte> Domain => "stormclock reply 1\n"u8;

    /// <summary>The same letter and key always give the same text.</summary>
    public static string Sign(string letterId, AckKey key) => $"{letterId}.{Convert.ToHexStringLower(Mac(letterId, key))}";

    /// <summary>The letter's id, or null when none of the keys made this text. Never throws, whatever the text.</summary>
    public static string? Read(string text, IReadOnlyCollection<AckKey> keys)
    {
        if (text.Length > LongestText || text.LastIndexOf('.') is not (> 0 and var dot)) return null;

        // Every key is tried, so that the time taken says nothing about which one fits.
        var (letterId, given, fits) = (text[..dot], Encoding.UTF8.GetBytes(text), false);
        foreach (var key in keys) fits |= CryptographicOperations.FixedTimeEquals(given, Encoding.UTF8.GetBytes(Sign(letterId, key)));
        return fits ? letterId : null;
    }

    private static ReadOnlySpan<byte> Mac(string letterId, AckKey key) =>
        key.Mac([.. Domain, .. Encoding.UTF8.GetBytes(letterId)]).AsSpan(..MacLength);
}
