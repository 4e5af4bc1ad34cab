using System.Security.Cryptography;

namespace StormClock.Core.Acknowledgements;

/// <summary>
/// A secret that signs links. Its id travels inside each link, so that a new key can come into use while links signed
/// with an older one still open.
/// </summary>
/// <param name="Id">Short name of the key; no secret.</param>
public sealed record AckKey(string Id, ReadOnlyMemory<byte> Secret)
{
    /// <summary>As long as the hash (RFC 2104 advises no shorter), bytes.</summary>
    public const int SecretLength = HMACSHA256.HashSizeInBytes;

    /// <summary>Says which key it is and never what it holds.</summary>
    public override string ToString() => $"key {Id}";

    internal byte[] Mac(ReadOnlySpan<byte> content) =>
        Secret.Length >= SecretLength
            ? HMACSHA256.HashData(Secret.Span, content)
            : throw new InvalidOperationException($"Key {Id} is shorter than {SecretLength} bytes.");
}
