using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using StormClock.Service.Delivery.Push;

namespace StormClock.Service.Tests.Delivery.Push;

/// <summary>A browser's half of a subscription: makes keys, and reads what was encrypted to them by RFC 8188 and RFC 8291 alone.</summary>
internal sealed class TestDevice : IDisposable
{
    private readonly ECDiffieHellman key = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
    private readonly byte[] secret = RandomNumberGenerator.GetBytes(16);

    public PushKeys Keys => new(Base64Url.EncodeToString(Public), Base64Url.EncodeToString(secret));

    private byte[] Public => [4, .. key.ExportParameters(false).Q.X!, .. key.ExportParameters(false).Q.Y!];

    public string Read(byte[] body)
    {
        Assert.Equal(4096u, BinaryPrimitives.ReadUInt32BigEndian(body.AsSpan(16)));
        Assert.InRange(body.Length, 1, 4096);
        Assert.Equal(65, body[20]);
        var (salt, from, sealedText, tag) = (body[..16], body[21..86], body[86..^16], body[^16..]);
        using var sender = ECDiffieHellman.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new() { X = from[1..33], Y = from[33..] } });
        var material = HKDF.DeriveKey(HashAlgorithmName.SHA256, key.DeriveRawSecretAgreement(sender.PublicKey), 32, secret, [.. "WebPush: info\0"u8, .. Public, .. from]);
        using var cipher = new AesGcm(HKDF.DeriveKey(HashAlgorithmName.SHA256, material, 16, salt, "Content-Encoding: aes128gcm\0"u8.ToArray()), 16);
        var record = new byte[sealedText.Length];
        cipher.Decrypt(HKDF.DeriveKey(HashAlgorithmName.SHA256, material, 12, salt, "Content-Encoding: nonce\0"u8.ToArray()), sealedText, tag, record);
        Assert.Equal(2, record[^1]);
        return Encoding.UTF8.GetString(record[..^1]);
    }

    public void Dispose() => key.Dispose();
}
