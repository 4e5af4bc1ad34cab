using System.Buffers.Text;
using System.Text;
using CsCheck;
using StormClock.Core.Acknowledgements;

namespace StormClock.Core.Tests.Acknowledgements;

public class AckTokenTests
{
    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    private static readonly AckKey Old = new("k1", Enumerable.Range(1, 32).Select(i => (byte)i).ToArray());
    private static readonly AckKey New = new("k2", Enumerable.Range(101, 32).Select(i => (byte)i).ToArray());
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 20, 12, 0);

    private static readonly Gen<AckToken> Tokens =
        from purpose in Gen.Enum<AckPurpose>()
        from ids in Gen.String[Gen.Char["abcxyz019-/|é"], 0, 24].Array[4]
        from hours in Gen.Int[1, 1000]
        select new AckToken(purpose, ids[0], ids[1], ids[2], ids[3], Now + Duration.FromHours(hours));

    [Fact]
    public void Read_WhatWasSigned_ComesBackWhole() => Tokens.Sample(token =>
    {
        var reading = AckToken.Read(token.Sign(Old), [New, Old], Now);
        Assert.Equal(AckVerdict.Good, reading.Verdict);
        Assert.Equal(token, reading.Token);
    });

    [Fact]
    public void Read_AnyOneCharacterChanged_IsRefused() =>
        Gen.Select(Tokens, Gen.Int[0, 10_000], Gen.Int[1, 63]).Sample((token, place, step) =>
        {
            var text = token.Sign(Old).ToCharArray();
            var at = place % text.Length;
            text[at] = Alphabet[(Alphabet.IndexOf(text[at]) + step) % 64];
            Assert.Equal(AckVerdict.NotOurs, AckToken.Read(new string(text), [Old], Now).Verdict);
        });

    /// <summary>The last character of some lengths holds spare bits that a lax reader would ignore.</summary>
    [Fact]
    public void Read_LastCharacterChanged_IsRefusedAtEveryLength()
    {
        foreach (var length in Enumerable.Range(0, 6))
        {
            var text = (Sample with { Subject = new string('a', length) }).Sign(Old);
            Assert.All(Alphabet.Where(c => c != text[^1]), c =>
                Assert.Equal(AckVerdict.NotOurs, AckToken.Read(text[..^1] + c, [Old], Now).Verdict));
        }
    }

    [Fact]
    public void Read_CutLengthenedOrPadded_IsRefused() => Tokens.Sample(token =>
    {
        var text = token.Sign(Old);
        foreach (var other in new[] { text[..^1], text[1..], text + "A", text + "=", text + "\n", " " + text })
        {
            Assert.Equal(AckVerdict.NotOurs, AckToken.Read(other, [Old], Now).Verdict);
        }
    });

    [Fact]
    public void Read_SignatureOfAnotherPurpose_IsRefused() =>
        Gen.Select(Tokens, Gen.Enum<AckPurpose>()).Where((token, other) => token.Purpose != other).Sample((token, other) =>
        {
            var signed = Base64Url.DecodeFromChars(token.Sign(Old));
            var wanted = Base64Url.DecodeFromChars((token with { Purpose = other }).Sign(Old));
            byte[] forged = [.. wanted[..^32], .. signed[^32..]];
            Assert.Equal(AckVerdict.NotOurs, AckToken.Read(Base64Url.EncodeToString(forged), [Old], Now).Verdict);
        });

    /// <summary>Every purpose, and each way to come by a link that nobody gave: none is taken, and the true one still is.</summary>
    [Fact]
    public void Read_HundredThousandLinksThatNobodyGave_NoneIsTaken()
    {
        var random = new Random(1938);
        var purposes = Enum.GetValues<AckPurpose>();
        var accepted = new List<string>();
        var kinds = new int[8];
        for (var i = 0; i < 100_000; i++)
        {
            var token = Sample with { Purpose = purposes[i % purposes.Length], Subject = $"beans/{i % 97}" };
            var kind = random.Next(kinds.Length);
            var (text, at) = Forge(kind, token, purposes[(i + 1 + (i / 7 % (purposes.Length - 1))) % purposes.Length], random);
            kinds[kind]++;
            if (AckToken.Read(text, [New, Old], at).Verdict == AckVerdict.Good) accepted.Add($"{kind}: {text}");
            if (i % 100 == 0) Assert.Equal(token, AckToken.Read(token.Sign(Old), [New, Old], Now).Token);
        }

        Assert.Empty(accepted);
        Assert.All(kinds, count => Assert.True(count > 12_000));
    }

    private static (string Text, Instant At) Forge(int kind, AckToken token, AckPurpose other, Random random)
    {
        var text = token.Sign(Old);
        var bytes = Base64Url.DecodeFromChars(text);
        var others = Base64Url.DecodeFromChars((kind % 2 == 0 ? token with { Purpose = other } : token with { PersonId = "ada", Subject = "shed/move" }).Sign(Old));
        switch (kind)
        {
            // Turned in one bit; cut short; lengthened.
            case 0: bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8)); break;
            case 1: return (text[..random.Next(text.Length)], Now);
            case 2: bytes = [.. bytes, (byte)random.Next(256)]; break;
            // Swapped: what one says under the signature of another, by purpose and by person.
            case 3: bytes = [.. bytes[..^32], .. others[^32..]]; break;
            case 4: bytes = [.. others[..^32], .. bytes[^32..]]; break;
            // Run out; replayed after its key was taken away; signed by somebody else under our key's name.
            case 5: return (text, token.Expires + Duration.FromSeconds(random.Next(100_000_000)));
            case 6: return (token.Sign(new AckKey("k0", Old.Secret)), Now);
            default:
                var secret = new byte[32];
                random.NextBytes(secret);
                return (token.Sign(new AckKey(Old.Id, secret)), Now);
        }

        return (Base64Url.EncodeToString(bytes), Now);
    }

    /// <summary>Where one field ends and the next begins is signed too.</summary>
    [Fact]
    public void Sign_SameLettersInOtherFields_IsAnotherToken() =>
        Assert.NotEqual(
            (Sample with { GardenId = "ab", EpisodeId = "c" }).Sign(Old),
            (Sample with { GardenId = "a", EpisodeId = "bc" }).Sign(Old));

    [Fact]
    public void Read_AnyText_NeverThrows() =>
        Gen.String[Gen.Char[Alphabet + "=./é\0"], 0, 300].Sample(text =>
            Assert.Equal(AckVerdict.NotOurs, AckToken.Read(text, [Old], Now).Verdict));

    [Fact]
    public void Read_AnyBytes_NeverThrows() =>
        Gen.Byte.Array[0, 200].Sample(bytes =>
            Assert.Equal(AckVerdict.NotOurs, AckToken.Read(Base64Url.EncodeToString(bytes), [Old], Now).Verdict));

    [Fact]
    public void Read_KeyLaidDown_IsRefused() =>
        Assert.Equal(AckVerdict.NotOurs, AckToken.Read(Sample.Sign(Old), [New], Now).Verdict);

    [Fact]
    public void Read_AnotherSecretUnderTheSameId_IsRefused() =>
        Assert.Equal(AckVerdict.NotOurs, AckToken.Read(Sample.Sign(Old), [New with { Id = Old.Id }], Now).Verdict);

    [Fact]
    public void Read_AroundItsEnd_ExpiresAtTheInstant()
    {
        var text = Sample.Sign(Old);
        Assert.Equal(AckVerdict.Good, AckToken.Read(text, [Old], Sample.Expires - Duration.FromSeconds(1)).Verdict);
        Assert.Equal(AckVerdict.Expired, AckToken.Read(text, [Old], Sample.Expires).Verdict);
    }

    [Fact]
    public void Read_ExpiredAndForged_IsNotOurs()
    {
        var text = Sample.Sign(Old);
        Assert.Equal(AckVerdict.NotOurs, AckToken.Read(text, [New with { Id = Old.Id }], Sample.Expires).Verdict);
    }

    [Fact]
    public void Sign_KeyTooShort_Throws() =>
        Assert.Throws<InvalidOperationException>(() => Sample.Sign(new AckKey("k", Encoding.UTF8.GetBytes("short"))));

    [Fact]
    public void ToString_OfAKey_KeepsTheSecret() => Assert.Equal("key k1", Old.ToString());

    [Fact]
    public void Hash_OrderOfJobs_DoesNotMatter()
    {
        Assert.Equal(AckList.Hash(["shed/move", "beans/tie"]), AckList.Hash(["beans/tie", "shed/move"]));
        Assert.NotEqual(AckList.Hash(["beans/tie"]), AckList.Hash(["beans/tie", "shed/move"]));
    }

    private static AckToken Sample { get; } =
        new(AckPurpose.Job, "quay-end", "e1", "bo", "beans/tie", Now + Duration.FromDays(3));
}
