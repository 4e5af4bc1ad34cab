using System.Text;
using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.WindProbabilities;

namespace StormClock.Core.Tests.Formats;

public class WindProbabilityReaderTests
{
    private const string Text = ProbabilityText.Ian16;

    [Fact]
    public void Reading_Ian16_GivesStormTimeAndRows()
    {
        var table = ProbabilityText.ReadGood(Text);

        Assert.Equal("AL092022/16/2022-09-27T03:00Z/wind-probabilities", table.Id);
        Assert.Equal("IAN wind speed probability table 16", table.Title);
        Assert.Equal(Instant.FromUtc(2022, 9, 27, 0, 0), table.Synoptic);
        Assert.Equal(6, table.Rows.Count);
        var row = table.Rows[4];
        Assert.Equal(("FT MYERS FL", 64), (row.Location, row.WindKt));
        Assert.Equal(
            [new(12, 0, 0), new(24, 0, 0), new(36, 6, 6), new(48, 9, 15), new(72, 5, 20), new(96, 1, 21), new PeriodChance(120, 0, 21)],
            row.Periods);
        Assert.Equal("GFMX 290N 850W", table.Rows[5].Location);
    }

    /// <summary>Rows as issued; named by storm, number and place.</summary>
    [Theory]
    [InlineData("HAVANA         34 80   9(89)   1(90)   X(90)   1(91)   X(91)   X(91)", "HAVANA", 34, "80/80 9/89 1/90 0/90 1/91 0/91 0/91")] // Ian 16
    [InlineData("ISLE OF PINES  34 99   X(99)   X(99)   X(99)   X(99)   X(99)   X(99)", "ISLE OF PINES", 34, "99/99 0/99 0/99 0/99 0/99 0/99 0/99")] // Ian 16
    [InlineData("GAINESVILLE FL 50  X   X( X)   1( 1)   5( 6)  24(30)   8(38)   2(40)", "GAINESVILLE FL", 50, "0/0 0/0 1/1 5/6 24/30 8/38 2/40")] // Ian 16
    [InlineData("LONG BEACH/LA  64  X   X( X)   X( X)   X( X)   X( X)   2( 2)   3( 5)", "LONG BEACH/LA", 64, "0/0 0/0 0/0 0/0 0/0 2/2 3/5")] // Hilary 5
    [InlineData("ENSENADA       34  X   X( X)   X( X)   X( X)   1( 1)  48(49)   1(50)", "ENSENADA", 34, "0/0 0/0 0/0 0/0 1/1 48/49 1/50")] // Hilary 5
    [InlineData("CEDAR KEY FL   34 41   2(43)   X(43)   1(44)   X(44)   X(44)   X(44)", "CEDAR KEY FL", 34, "41/41 2/43 0/43 1/44 0/44 0/44 0/44")] // Ian 26
    public void Reading_RetypedRow_GivesItsNumbers(string line, string location, int windKt, string onsetsAndTotals)
    {
        var row = Assert.Single(ProbabilityText.ReadGood(WithRows(line)).Rows);
        Assert.Equal((location, windKt), (row.Location, row.WindKt));
        Assert.Equal(onsetsAndTotals, string.Join(' ', row.Periods.Select(period => $"{period.OnsetPercent}/{period.CumulativePercent}")));
    }

    [Fact]
    public void Reading_TableWithoutRows_IsGood() => Assert.Empty(ProbabilityText.ReadGood(WithRows("")).Rows);

    [Fact]
    public void Reading_Special_SaysSo() =>
        Assert.True(ProbabilityText.ReadGood(Text.Replace("IAN WIND SPEED", "IAN SPECIAL WIND SPEED")) is { Special: true, StormName: "IAN", Number: "16" });

    [Fact]
    public void Reading_Correction_HasAnIdOfItsOwn() =>
        Assert.EndsWith("/corrected-B", ProbabilityText.ReadGood(Text.Replace("270257", "270257 CCB")).Id);

    [Fact]
    public void Reading_ThroughTheCommonDoor_GivesTheTable() =>
        Assert.IsType<WindProbabilityAdvisory>(MessageReader.Read(Encoding.UTF8.GetBytes(Text)).Value);

    [Theory]
    [InlineData("0300 UTC TUE SEP 27 2022", "0300 UTC TUE SEP 31 2022", 7, "does not exist")]
    [InlineData("(24)    (36)", "(24)    (30)", 14, "columns")]
    [InlineData("FORECAST HOUR", "FORECAST OUR", 18, "above the line FORECAST HOUR")]
    [InlineData("52(61)  13(74)", "52(61)  13[74)", 21, "no row of the table")]
    [InlineData("52(61)  13(74)   7(81)", "52(61)   7(81)", 21, "no row of the table")]
    [InlineData("52(61)  13(74)", "52(61)  13(44)", 21, "do not add up")]
    [InlineData("52(61)", "25(61)", 21, "do not add up")]
    [InlineData("FT MYERS FL    34  1", "FT MYERS FL    43  1", 21, "no row of the table")]
    [InlineData("FT MYERS FL    64", "FT MYERS FL    50", 23, "a second row")]
    public void Reading_OneSpoiltLine_NamesTheLine(string good, string bad, int line, string reason)
    {
        var faults = ProbabilityText.Read(Text.Replace(good, bad)).Faults;
        Assert.Contains(faults, fault => fault.Line == line && fault.Reason.Contains(reason));
    }

    [Fact]
    public void Reading_TextCutOff_IsRefusedAndNotTakenForAShorterTable() =>
        Assert.Contains("fetch it again", Assert.Single(ProbabilityText.Read(Text[..Text.IndexOf("\nGFMX", StringComparison.Ordinal)]).Faults).Reason);

    [Fact]
    public void Reading_TextWithoutTable_SaysThatItIsMissing() =>
        Assert.Contains("is missing", Assert.Single(ProbabilityText.Read(Text[..Text.IndexOf("\nFORECAST HOUR", StringComparison.Ordinal)]).Faults).Reason);

    [Theory]
    [InlineData("Remember to water the lemons.", "text of another kind")]
    [InlineData(AdvisoryText.Invented, "forecast/advisory")]
    [InlineData("a\0b", "binary")]
    public void Reading_OtherProduct_NamesItInTheFault(string text, string name) =>
        Assert.Contains(name, Assert.Single(ProbabilityText.Read(text).Faults).Reason);

    [Fact]
    public void Reading_HugeFile_IsRefusedUnread() =>
        Assert.Contains("256 KB", WindProbabilityReader.Read(new byte[WindProbabilityReader.MostBytes + 1]).Faults[0].Reason);

    /// <summary>Whatever happens to a message on its way: a whole table or faults with a line, never an exception.</summary>
    [Fact]
    public void Reading_SpoiltAtRandom_NeverThrows()
    {
        var good = Encoding.UTF8.GetBytes(Text);
        var lines = Text.Split('\n');
        var cut = Gen.Int[0, good.Length].Select(length => good[..length]);
        var flips = Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte).Array[1, 12].Select(changes => Flipped(good, changes));
        var swaps = Gen.Select(Gen.Int[0, lines.Length - 1], Gen.Int[0, lines.Length - 1]).Array[1, 6].Select(pairs => Swapped(lines, pairs));

        Gen.OneOf(cut, flips, swaps).Sample(bytes =>
        {
            var result = WindProbabilityReader.Read(bytes);
            return result.IsGood ? result.Value!.Rows.All(IsWhole) : result.Faults.All(fault => fault.Line >= 1 && fault.Reason.Length > 0);
        }, iter: 3000);
    }

    private static bool IsWhole(WindProbabilityRow row) =>
        row.Location.Length > 0
        && row.WindKt is 34 or 50 or 64
        && row.Periods.Select(period => period.UntilHour).SequenceEqual([12, 24, 36, 48, 72, 96, 120])
        && row.Periods.All(period => period is { OnsetPercent: >= 0 and <= 100, CumulativePercent: >= 0 and <= 100 })
        && row.Periods.Zip(row.Periods.Skip(1)).All(pair => pair.First.CumulativePercent <= pair.Second.CumulativePercent);

    private static string WithRows(string rows) =>
        Text[..Text.IndexOf("KEY WEST FL    34", StringComparison.Ordinal)] + rows + "\n" + Text[Text.IndexOf("$$", StringComparison.Ordinal)..];

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
