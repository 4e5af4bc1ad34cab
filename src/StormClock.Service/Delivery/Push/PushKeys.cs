using System.Buffers.Text;
using System.Security.Cryptography;

namespace StormClock.Service.Delivery.Push;

/// <summary>What a message to a device is encrypted with (RFC 8291 2 and 3.1).</summary>
/// <param name="PublicKey">The device's point on P-256, base64url of 65 bytes.</param>
/// <param name="Secret">The secret shared with it, base64url of 16 bytes.</param>
public sealed record PushKeys(string PublicKey, string Secret)
{
    public const int PointLength = 65;
    public const int SecretLength = 16;

    private const int CoordinateLength = 32;
    private const byte Uncompressed = 4;

    /// <summary>Null when these are no such keys, e.g. a point that is not on the curve.</summary>
    public static PushKeys? Read(string publicKey, string secret)
    {
        if (Decode(publicKey, PointLength) is not [Uncompressed, ..] || Decode(secret, SecretLength) is null) return null;

        var keys = new PushKeys(publicKey, secret);
        try
        {
            using var point = keys.Point();
            return keys;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    public byte[] PublicBytes() => Base64Url.DecodeFromChars(PublicKey);

    public byte[] SecretBytes() => Base64Url.DecodeFromChars(Secret);

    /// <summary>The public key, to agree on a secret with; throws CryptographicException when it is not on the curve.</summary>
    public ECDiffieHellman Point()
    {
        var bytes = PublicBytes();
        return ECDiffieHellman.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            Q = new ECPoint { X = bytes[1..(1 + CoordinateLength)], Y = bytes[(1 + CoordinateLength)..] },
        });
    }

    /// <summary>A point as 65 bytes: 4, X, Y.</summary>
    public static byte[] Bytes(ECPoint point) => [Uncompressed, .. point.X!, .. point.Y!];

    private static byte[]? Decode(string text, int length) =>
        text.Length <= 2 * length && Base64Url.IsValid(text) && Base64Url.DecodeFromChars(text) is var bytes && bytes.Length == length ? bytes : null;
}
