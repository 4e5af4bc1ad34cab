using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using StormClock.Service.Delivery.Push;

namespace StormClock.Service.Tests.Delivery.Push;

public class PushEncryptionTests
{
    /// <summary>The worked example of RFC 8291, section 5 and appendix A: keys, salt, text and the whole body.</summary>
    [Fact]
    public void Encrypt_ExampleOfRfc8291_GivesItsBytes()
    {
        var device = PushKeys.Read("BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", "BTBZMqHH6r4Tts7J_aSIgg")!;
        var point = Base64Url.DecodeFromChars("BP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8");
        using var sender = ECDiffieHellman.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            Q = new() { X = point[1..33], Y = point[33..] },
            D = Base64Url.DecodeFromChars("yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"),
        });

        var body = PushEncryption.Encrypt("When I grow up, I want to be a watermelon"u8, device, sender, Base64Url.DecodeFromChars("DGv6ra1nlYgDCS1FRnbzlw"));

        Assert.Equal(
            "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN",
            Base64Url.EncodeToString(body));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(400)]
    [InlineData(PushEncryption.LongestText)]
    public void Encrypt_AnyLength_IsReadByTheDeviceAndFitsOneRecord(int length)
    {
        using var device = new TestDevice();
        var text = new string('x', length);
        Assert.Equal(text, device.Read(PushEncryption.Encrypt(Encoding.UTF8.GetBytes(text), device.Keys)));
    }

    [Fact]
    public void Encrypt_LongestText_FillsTheBodyExactly()
    {
        using var device = new TestDevice();
        Assert.Equal(3993, PushEncryption.LongestText);
        Assert.Equal(4096, PushEncryption.Encrypt(new byte[3993], device.Keys).Length);
        Assert.Throws<ArgumentException>(() => PushEncryption.Encrypt(new byte[3994], device.Keys));
    }

    [Fact]
    public void Encrypt_Twice_UsesNoKeyOrSaltTwice()
    {
        using var device = new TestDevice();
        var (one, other) = (PushEncryption.Encrypt("x"u8, device.Keys), PushEncryption.Encrypt("x"u8, device.Keys));
        Assert.NotEqual(one[..16], other[..16]);
        Assert.NotEqual(one[21..86], other[21..86]);
    }

    [Theory]
    [InlineData("", "BTBZMqHH6r4Tts7J_aSIgg")]
    [InlineData("not base64 at all!", "BTBZMqHH6r4Tts7J_aSIgg")]
    [InlineData("BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", "")]
    [InlineData("BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", "BTBZMqHH6r4Tts7J_aSI")]
    [InlineData("AyVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", "BTBZMqHH6r4Tts7J_aSIgg")]
    [InlineData("BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw8", "BTBZMqHH6r4Tts7J_aSIgg")]
    public void Keys_NotOfTheCurveOrOfOddLength_AreNone(string publicKey, string secret) => Assert.Null(PushKeys.Read(publicKey, secret));
}
