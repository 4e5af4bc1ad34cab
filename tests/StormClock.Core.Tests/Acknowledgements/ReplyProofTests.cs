using CsCheck;
using StormClock.Core.Acknowledgements;

namespace StormClock.Core.Tests.Acknowledgements;

public class ReplyProofTests
{
    private const string Letter = "3f9c0d1e2a4b5c6d7e8f90a1b2c3d4e5";
    private static readonly AckKey Old = new("k1", Enumerable.Range(1, 32).Select(i => (byte)i).ToArray());
    private static readonly AckKey New = new("k2", Enumerable.Range(101, 32).Select(i => (byte)i).ToArray());

    private static readonly Gen<string> Ids = Gen.String[Gen.Char["0123456789abcdef.-_é"], 1, 60];

    [Fact]
    public void Read_WhatWasSigned_GivesTheLetter() => Ids.Sample(id => Assert.Equal(id, ReplyProof.Read(ReplyProof.Sign(id, Old), [New, Old])));

    [Fact]
    public void Sign_Twice_GivesTheSame() => Assert.Equal(ReplyProof.Sign(Letter, Old), ReplyProof.Sign(Letter, Old));

    /// <summary>Fits the local part of a Message-ID whatever a server thinks of upper and lower case.</summary>
    [Fact]
    public void Sign_LetterId_IsLowerCaseHexWithOneDot() => Assert.Matches("^[0-9a-f]{32}\\.[0-9a-f]{32}$", ReplyProof.Sign(Letter, Old));

    [Fact]
    public void Read_KeyTakenAway_IsRefused() => Assert.Null(ReplyProof.Read(ReplyProof.Sign(Letter, Old), [New]));

    [Fact]
    public void Read_AnyOneCharacterChanged_IsRefused() =>
        Gen.Select(Ids, Gen.Int[0, 10_000], Gen.Char["0123456789abcdefABCDEF.@"]).Sample((id, place, put) =>
        {
            var text = ReplyProof.Sign(id, Old).ToCharArray();
            var at = place % text.Length;
            if (text[at] == put) return;
            text[at] = put;
            Assert.Null(ReplyProof.Read(new string(text), [New, Old]));
        });

    [Fact]
    public void Read_CutOrLengthened_IsRefused()
    {
        var text = ReplyProof.Sign(Letter, Old);
        Assert.All(Enumerable.Range(0, text.Length), length => Assert.Null(ReplyProof.Read(text[..length], [Old])));
        Assert.All((string[])[text + "0", "0" + text, text + ".", text + "." + text, text + "\n", " " + text], other => Assert.Null(ReplyProof.Read(other, [Old])));
    }

    /// <summary>A signature made for a link, by the same key and over the same id, is none for a reply.</summary>
    [Fact]
    public void Read_MarkMadeForALink_IsRefused()
    {
        var link = new AckToken(AckPurpose.All, "g", "e", "p", Letter, Instant.FromUtc(2027, 10, 1, 0, 0)).Sign(Old);
        var mac = System.Buffers.Text.Base64Url.DecodeFromChars(link)[^32..];
        Assert.Null(ReplyProof.Read($"{Letter}.{Convert.ToHexStringLower(mac.AsSpan(..16))}", [Old]));
        var bare = System.Security.Cryptography.HMACSHA256.HashData(Old.Secret.Span, System.Text.Encoding.UTF8.GetBytes(Letter));
        Assert.Null(ReplyProof.Read($"{Letter}.{Convert.ToHexStringLower(bare.AsSpan(..16))}", [Old]));
    }

    /// <summary>Somebody who knows the pattern, one real letter's id, and forms of marks; a fixed seed, all refused.</summary>
    [Fact]
    public void Read_HundredThousandForgeries_NoneIsTaken()
    {
        var random = new Random(20270920);
        var mark = new byte[16];
        var taken = 0;
        for (var i = 0; i < 100_000; i++)
        {
            random.NextBytes(mark);
            var id = i % 2 == 0 ? Letter : Convert.ToHexStringLower(mark);
            if (ReplyProof.Read($"{id}.{Convert.ToHexStringLower(mark)}", [New, Old]) is not null) taken++;
        }

        Assert.Equal(0, taken);
    }

    [Fact]
    public void Read_AnyText_NeverThrows() => Gen.String[Gen.Char["0af.@<>é\0\ud800"], 0, 300].Sample(text => Assert.Null(ReplyProof.Read(text, [Old])));
}
