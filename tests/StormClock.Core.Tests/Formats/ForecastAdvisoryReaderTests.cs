using System.Text;
using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Tests.Formats;

public class ForecastAdvisoryReaderTests
{
    private const string Text = AdvisoryText.Invented;

    [Fact]
    public void Reading_InventedStorm_GivesEveryPointAcrossTheMonth()
    {
        var storm = AdvisoryText.ReadGood(Text);

        Assert.Equal("AL152027/7/2027-09-30T09:00Z", storm.Id);
        Assert.Equal([12, 24, 48, 72, 96], storm.Forecast.Select(point => (point.Valid - storm.Synoptic).TotalHours));
        Assert.Equal(new QuadrantRadii(20, 15, 0, 15), storm.Now.Radii64);
    }

    [Theory]
    [InlineData("", "empty file")]
    [InlineData("  \r\n \n", "empty file")]
    [InlineData("<!DOCTYPE html><html><pre>HURRICANE X FORECAST/ADVISORY NUMBER 1</pre></html>", "HTML page")]
    [InlineData("<alert xmlns='urn:oasis:names:tc:emergency:cap:1.2'/>", "CAP alert")]
    [InlineData("<?xml version='1.0'?><rss version='2.0'/>", "RSS feed")]
    [InlineData("<feed xmlns='http://www.w3.org/2005/Atom'/>", "Atom feed")]
    [InlineData("{\"a\":1}", "JSON")]
    [InlineData("a\0b", "binary")]
    [InlineData("FONT12 KNHC 030246\nHURRICANE X WIND SPEED PROBABILITIES NUMBER  18", "wind speed probabilities")]
    [InlineData("TROPICAL STORM X PROBABILITIES NUMBER  25\n5 AM EDT SUN AUG 15 2004", "PROBABILITIES NUMBER")]
    [InlineData("Hurricane X Discussion Number  18\n1100 PM EDT", "discussion")]
    [InlineData("BULLETIN\nHurricane X Intermediate Advisory Number 18A\n200 AM EDT", "public advisory")]
    [InlineData("Remember to water the lemons.", "text of another kind")]
    public void Reading_OtherProduct_NamesItInTheFault(string text, string name)
    {
        var fault = Assert.Single(AdvisoryText.Read(text).Faults);
        Assert.Contains(name, fault.Reason);
        Assert.Equal(1, fault.Line);
    }

    [Theory]
    [InlineData("nhc-pws", "wind speed probabilities")]
    [InlineData("nhc-tcp", "public advisory")]
    [InlineData("nhc-rss", "RSS feed")]
    [InlineData("cap", "CAP alert")]
    public void Reading_RealMessagesOfOtherProducts_NamesThem(string folder, string name)
    {
        foreach (var file in Shared.Files(folder))
        {
            var result = ForecastAdvisoryReader.Read(File.ReadAllBytes(file));
            Assert.True(!result.IsGood && result.Faults[0].Reason.Contains(name), $"{file}: {string.Join(' ', result.Faults)}");
        }
    }

    [Fact]
    public void Reading_HugeFile_IsRefusedUnread() =>
        Assert.Contains("256 KB", ForecastAdvisoryReader.Read(new byte[ForecastAdvisoryReader.MostBytes + 1]).Faults[0].Reason);

    [Theory]
    [InlineData("0900 UTC THU SEP 30 2027", "0900 UTC THU SEP 31 2027", 7, "does not exist")]
    [InlineData("MAX WIND  80 KT...", "MAX WIMD  80 KT...", 20, "cannot be understood")]
    [InlineData("FORECAST VALID 01/0600Z", "FORECAST VALLID 01/0600Z", 26, "belongs to no point")]
    [InlineData("FORECAST VALID 01/0600Z 26.0N  74.9W", "FORECAST VALID 01/0600Z 96.0N  74.9W", 25, "not on the globe")]
    [InlineData("FORECAST VALID 01/0600Z 26.0N  74.9W", "FORECAST VALID 01/0600Z", 25, "no position")]
    [InlineData("FORECAST VALID 01/0600Z", "FORECAST VALID 01/2600Z", 25, "does not exist")]
    [InlineData("FORECAST VALID 01/0600Z", "FORECAST VALID 30/0600Z", 25, "not after the advisory")]
    [InlineData("FORECAST VALID 02/0600Z", "FORECAST VALID 30/2100Z", 30, "before that of the point above")]
    [InlineData("OUTLOOK VALID 04/0600Z", "OUTLOOK VALID 07/0600Z", 37, "more than 6 days")]
    [InlineData("34 KT... 80NE  70SE  30SW  40NW.", "34 KT... 80NE  70SE  30SW", 32, "cannot be understood")]
    [InlineData("34 KT... 80NE", "84 KT... 80NE", 32, "84 kt")]
    public void Reading_OneSpoiltLine_NamesTheLine(string good, string bad, int line, string reason)
    {
        var faults = AdvisoryText.Read(Text.Replace(good, bad)).Faults;
        Assert.Contains(faults, fault => fault.Line == line && fault.Reason.Contains(reason));
    }

    [Fact]
    public void Reading_SpoiltLineAfterDoubleReturns_IsCountedAsAPersonWould() =>
        Assert.Equal(25, AdvisoryText.Read(Text.Replace("26.0N", "96.0N").Replace("\n", "\r\r\n")).Faults[0].Line);

    [Fact]
    public void Reading_SeveralSpoiltLines_ReportsAll()
    {
        var text = Text.Replace("26.0N", "96.0N").Replace("MAX WIND  45 KT", "MAX WIND  XX KT");
        Assert.Equal([25, 31], AdvisoryText.Read(text).Faults.Select(fault => fault.Line));
    }

    [Fact]
    public void Reading_TextCutOff_IsRefusedAndNotTakenForAShorterForecast()
    {
        var cut = Text[..Text.IndexOf("OUTLOOK VALID 03", StringComparison.Ordinal)];
        Assert.Contains("fetch it again", Assert.Single(AdvisoryText.Read(cut).Faults).Reason);
    }

    [Theory]
    [InlineData("000\n", "")]
    [InlineData("000\n", "ZCZC MIATCMAT3 ALL\nTTAA00 KNHC DDHHMM\n")]
    [InlineData("TCMAT3\n", "TCMAT3\n\n000\nWTNT23 KNHC 300845\nTCMAT3\n")]
    [InlineData("\n", "\r\n")]
    [InlineData("\n", "\r\r\n")]
    [InlineData("HURRICANE CENTER LOCATED", "THE GALE WARNING FOR THE SOUND MEANS WINDS ABOVE\n34 KT FROM 20 NE TO 30 NW.\n\nHURRICANE CENTER LOCATED")]
    public void Reading_HeadersEndsOrProseOtherwise_ChangesNothing(string from, string to)
    {
        var at = Text.IndexOf(from, StringComparison.Ordinal);
        var changed = from == "\n" ? Text.Replace(from, to) : Text[..at] + to + Text[(at + from.Length)..];
        Assert.Equivalent(AdvisoryText.ReadGood(Text), AdvisoryText.ReadGood(changed));
    }

    [Fact]
    public void Reading_LetterOutsideAscii_ChangesNothing()
    {
        var latin = Encoding.Latin1.GetBytes(Text.Replace("NOBODY", "NÓBODY"));
        Assert.Equivalent(AdvisoryText.ReadGood(Text), ForecastAdvisoryReader.Read(latin).Value);
    }

    [Theory]
    [InlineData("300845", "300845 CCA", "/corrected")]
    [InlineData("300845", "300845 CCB", "/corrected-B")]
    [InlineData("NUMBER   7", "NUMBER   7...CORRECTED", "/corrected")]
    public void Reading_Correction_HasAnIdOfItsOwn(string from, string to, string end)
    {
        var corrected = AdvisoryText.ReadGood(Text.Replace(from, to));
        Assert.True(corrected.Corrected);
        Assert.Equal("AL152027/7/2027-09-30T09:00Z" + end, corrected.Id);
    }

    /// <summary>Whatever happens to a message on its way: an advisory or faults with a line, never an exception.</summary>
    [Fact]
    public void Reading_SpoiltAtRandom_NeverThrows()
    {
        var good = Encoding.UTF8.GetBytes(Text);
        var cut = Gen.Int[0, good.Length].Select(length => good[..length]);
        var flips = Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte).Array[1, 12].Select(changes => Flipped(good, changes));
        var lines = Text.Split('\n');
        var swaps = Gen.Select(Gen.Int[0, lines.Length - 1], Gen.Int[0, lines.Length - 1]).Array[1, 6].Select(pairs => Swapped(lines, pairs));

        Gen.OneOf(cut, flips, swaps).Sample(bytes =>
        {
            var result = ForecastAdvisoryReader.Read(bytes);
            return result.IsGood ? IsWhole(result.Value!) : result.Faults.All(fault => fault.Line >= 1 && fault.Reason.Length > 0);
        }, iter: 3000);
    }

    private static bool IsWhole(CycloneAdvisory one) =>
        one.Forecast.Zip(one.Forecast.Skip(1)).All(pair => pair.First.Valid < pair.Second.Valid)
        && one.Forecast.All(point => point.Centre is not null || point.Nature == CycloneNature.Dissipated);

    private static byte[] Flipped(byte[] good, (int At, byte Value)[] changes)
    {
        var bytes = good.ToArray();
        foreach (var (at, value) in changes) bytes[at] = value;
        return bytes;
    }

    private static byte[] Swapped(string[] good, (int One, int Other)[] pairs)
    {
        var lines = good.ToArray();
        foreach (var (one, other) in pairs) (lines[one], lines[other]) = (lines[other], lines[one]);
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }
}
