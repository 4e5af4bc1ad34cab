using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace StormClock.Service.Store;

/// <summary>
/// Short fixed name for any texts: 32 hex digits of SHA-256. Ids that people write may be longer than the 1023 bytes an
/// index key may have, and may hold any separator.
/// </summary>
public static class Fingerprint
{
    /// <summary>The same texts in the same order give the same name; moving a letter from one text to the next does not.</summary>
    public static string Of(params ReadOnlySpan<string> texts)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> length = stackalloc byte[4];
        foreach (var text in texts)
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            BinaryPrimitives.WriteInt32LittleEndian(length, bytes.Length);
            hash.AppendData(length);
            hash.AppendData(bytes);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, 16));
    }
}
