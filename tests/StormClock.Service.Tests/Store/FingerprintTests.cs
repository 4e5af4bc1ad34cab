using CsCheck;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store;

public class FingerprintTests
{
    [Theory]
    // printf '\x01\0\0\0a\x01\0\0\0b' | sha256sum | cut -c1-32
    [InlineData(new[] { "a", "b" }, "37efc929c5c40fd796cc3111e218b304")]
    // printf '\x02\0\0\0ab\0\0\0\0' | sha256sum | cut -c1-32
    [InlineData(new[] { "ab", "" }, "4b4dfb90f0b53d4dc6d867451f6199d2")]
    public void Of_KnownTexts_StaysAsItWasStored(string[] texts, string expected) => Assert.Equal(expected, Fingerprint.Of(texts));

    [Fact]
    public void Of_LetterMovedAcrossTheBorder_IsAnotherName() => Gen.Select(Gen.String[1, 20], Gen.String[0, 20]).Sample(
        (left, right) => Assert.NotEqual(Fingerprint.Of(left, right), Fingerprint.Of(left[..^1], left[^1] + right)));

    [Fact]
    public void Of_VeryLongText_FitsAnIndexKey() => Assert.Equal(32, Fingerprint.Of(new string('x', 100_000)).Length);
}
