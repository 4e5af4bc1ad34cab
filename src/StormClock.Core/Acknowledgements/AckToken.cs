using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace StormClock.Core.Acknowledgements;

/// <summary>What a link is for; a token made for one purpose is never good for another.</summary>
/// <remarks><see cref="Push"/> opens the page where a person's devices are subscribed to notifications; it belongs to no episode.</remarks>
public enum AckPurpose { Job, All, Recheck, Indoors, Calendar, Push }

/// <summary>How reading a link's token ended.</summary>
public enum AckVerdict { Good, Expired, NotOurs }

/// <param name="Token">Given exactly when the verdict is <see cref="AckVerdict.Good"/>.</param>
public sealed record AckReading(AckVerdict Verdict, AckToken? Token);

/// <summary>
/// What a signed link says: who may answer what, until when. Written as base64url of the content followed by its
/// HMAC-SHA256; the content is readable by anyone, only the signature makes it ours.
/// </summary>
/// <param name="Subject">The job's token (<see cref="AckPurpose.Job"/>), else the <see cref="AckList.Hash"/> of the jobs listed; empty for Indoors, Calendar and Push.</param>
/// <param name="Expires">Kept to the second.</param>
public sealed record AckToken(
    AckPurpose Purpose, string GardenId, string EpisodeId, string PersonId, string Subject, Instant Expires)
{
    /// <summary>Longer text is refused unread; the ids of a garden book stay far below it.</summary>
    public const int LongestText = 1024;

    private const int MacLength = HMACSHA256.HashSizeInBytes;

    /// <summary>Keeps these signatures apart from anything else the same key might ever sign.</summary>
    private static ReadOnlySpan<byte> Domain => "stormclock link 1\n"u8;

    /// <summary>The token as text for a link: letters, digits, hyphen and underscore.</summary>
    public string Sign(AckKey key)
    {
        var content = Content(key.Id);
        byte[] all = [.. content, .. key.Mac([.. Domain, .. content])];
        var text = Base64Url.EncodeToString(all);
        return text.Length <= LongestText
            ? text
            : throw new ArgumentException($"The ids of this link make it longer than {LongestText} characters.", nameof(key));
    }

    /// <summary>Reads what <see cref="Sign"/> wrote with any of the keys. Never throws, whatever the text.</summary>
    public static AckReading Read(string text, IReadOnlyCollection<AckKey> keys, Instant now)
    {
        if (Decode(text) is not { } bytes) return NotOurs;

        var content = bytes.AsSpan(..^MacLength);
        if (Parse(content) is not var (keyId, token)) return NotOurs;
        if (keys.FirstOrDefault(key => key.Id == keyId) is not { } signer) return NotOurs;
        if (!CryptographicOperations.FixedTimeEquals(bytes.AsSpan(^MacLength..), signer.Mac([.. Domain, .. content]))) return NotOurs;

        return now < token.Expires ? new AckReading(AckVerdict.Good, token) : new AckReading(AckVerdict.Expired, null);
    }

    private static AckReading NotOurs { get; } = new(AckVerdict.NotOurs, null);

    private byte[] Content(string keyId)
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream, Encoding.UTF8);
        writer.Write((byte)Purpose);
        writer.Write(Expires.ToUnixTimeSeconds());
        foreach (var part in (string[])[keyId, GardenId, EpisodeId, PersonId, Subject]) writer.Write(part);
        writer.Flush();
        return stream.ToArray();
    }

    /// <summary>
    /// The bytes, or null when the text is not the one way to write them: the spare bits of the last character could
    /// otherwise differ unnoticed.
    /// </summary>
    private static byte[]? Decode(string text)
    {
        if (text.Length > LongestText || !Base64Url.IsValid(text)) return null;

        var bytes = Base64Url.DecodeFromChars(text);
        return bytes.Length > MacLength && Base64Url.EncodeToString(bytes) == text ? bytes : null;
    }

    private static (string KeyId, AckToken Token)? Parse(ReadOnlySpan<byte> content)
    {
        using var stream = new MemoryStream(content.ToArray());
        using var reader = new BinaryReader(stream, Encoding.UTF8);
        try
        {
            var purpose = (AckPurpose)reader.ReadByte();
            var expires = Instant.FromUnixTimeSeconds(reader.ReadInt64());
            var keyId = reader.ReadString();
            var token = new AckToken(
                purpose, reader.ReadString(), reader.ReadString(), reader.ReadString(), reader.ReadString(), expires);
            return stream.Position == stream.Length && Enum.IsDefined(purpose) ? (keyId, token) : null;
        }
        catch (Exception notOurs) when (notOurs is IOException or FormatException or ArgumentException)
        {
            // The framework's reader tells of foreign bytes by these; here they are expected.
            return null;
        }
    }
}
