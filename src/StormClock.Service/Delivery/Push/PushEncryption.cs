using System.Buffers.Binary;
using System.Security.Cryptography;

namespace StormClock.Service.Delivery.Push;

/// <summary>Encrypts a message so that only the device reads it, not its push service (RFC 8291, RFC 8188).</summary>
public static class PushEncryption
{
    /// <summary>Largest body that every push service must take, and the one record it is made of, bytes (RFC 8291 4).</summary>
    public const int LargestBody = 4096;

    /// <summary>Longest text that fits, bytes: less the header, the end mark and the authentication tag.</summary>
    public const int LongestText = LargestBody - HeaderLength - 1 - TagLength;

    private const int SaltLength = 16;
    private const int TagLength = 16;
    private const int HeaderLength = SaltLength + 4 + 1 + PushKeys.PointLength;
    private const byte LastRecord = 2;

    /// <summary>The body of one message, under a key and a salt used for nothing else.</summary>
    public static byte[] Encrypt(ReadOnlySpan<byte> text, PushKeys to)
    {
        using var sender = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
        return Encrypt(text, to, sender, RandomNumberGenerator.GetBytes(SaltLength));
    }

    /// <summary>For tests, which must bring the key and the salt of a worked example.</summary>
    internal static byte[] Encrypt(ReadOnlySpan<byte> text, PushKeys to, ECDiffieHellman sender, byte[] salt)
    {
        if (text.Length > LongestText) throw new ArgumentException($"The text is longer than {LongestText} bytes.", nameof(text));

        var from = PushKeys.Bytes(sender.ExportParameters(includePrivateParameters: false).Q);
        var material = Material(to, sender, from);
        var key = Derive(material, 16, salt, "Content-Encoding: aes128gcm\0"u8);
        var nonce = Derive(material, 12, salt, "Content-Encoding: nonce\0"u8);

        byte[] record = [.. text, LastRecord];
        var body = new byte[HeaderLength + record.Length + TagLength];
        salt.CopyTo(body, 0);
        BinaryPrimitives.WriteUInt32BigEndian(body.AsSpan(SaltLength), LargestBody);
        body[SaltLength + 4] = PushKeys.PointLength;
        from.CopyTo(body, SaltLength + 5);
        using var cipher = new AesGcm(key, TagLength);
        cipher.Encrypt(nonce, record, body.AsSpan(HeaderLength, record.Length), body.AsSpan(HeaderLength + record.Length));
        return body;
    }

    /// <summary>What both sides can work out and nobody else (RFC 8291 3.4).</summary>
    private static byte[] Material(PushKeys to, ECDiffieHellman sender, byte[] from)
    {
        using var receiver = to.Point();
        var shared = sender.DeriveRawSecretAgreement(receiver.PublicKey);
        return Derive(shared, 32, to.SecretBytes(), [.. "WebPush: info\0"u8, .. to.PublicBytes(), .. from]);
    }

    private static byte[] Derive(byte[] material, int length, byte[] salt, ReadOnlySpan<byte> info)
    {
        var derived = new byte[length];
        HKDF.DeriveKey(HashAlgorithmName.SHA256, material, derived, salt, info);
        return derived;
    }
}
