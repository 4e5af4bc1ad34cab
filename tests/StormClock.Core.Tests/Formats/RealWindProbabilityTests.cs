using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.WindProbabilities;

namespace StormClock.Core.Tests.Formats;

/// <summary>
/// All real tables at hand. Counts and sums were taken from the files by other means, not from the reader. No storm of these texts is
/// among those in <c>nhc-tables</c>, so the rows there are written out in the layout of the texts instead.
/// </summary>
public partial class RealWindProbabilityTests
{
    private const int RowsOf34 = 10268;
    private const int RowsOf50 = 4225;
    private const int RowsOf64 = 2902;
    private const int SumOfOnsets = 427606;
    private static readonly int[] SumsOfTotals = [128159, 186502, 234933, 278894, 351437, 396955, 427571];

    [Fact]
    public void Reading_EveryRealText_LosesNoRow()
    {
        var tables = All();
        var rows = tables.SelectMany(table => table.Rows).ToList();

        Assert.Equal(275, tables.Count);
        Assert.Equal(275, tables.Select(table => table.Id).Distinct().Count());
        Assert.Equal(5, tables.Count(table => table.Rows.Count == 0));
        Assert.Equal(2, tables.Count(table => table.Special));
        Assert.Equal([RowsOf34, RowsOf50, RowsOf64], new[] { 34, 50, 64 }.Select(kt => rows.Count(row => row.WindKt == kt)));
        Assert.Equal(SumOfOnsets, rows.Sum(row => row.Periods.Sum(period => period.OnsetPercent)));
        Assert.Equal(SumsOfTotals, Enumerable.Range(0, 7).Select(k => rows.Sum(row => row.Periods[k].CumulativePercent)));
    }

    /// <summary>The first period is written out in the text, e.g. "TIME 00Z TUE 12Z TUE".</summary>
    [Fact]
    public void Reading_EveryRealText_CountsFromTheTimeOfTheFirstPeriod()
    {
        foreach (var file in Shared.Files("nhc-pws", "*.txt"))
        {
            var first = FirstPeriod().Match(File.ReadAllText(file));
            var synoptic = Read(file).Synoptic.InUtc();
            Assert.Equal(first.Groups["hour"].Value, synoptic.Hour.ToString("00", CultureInfo.InvariantCulture));
            Assert.StartsWith(first.Groups["day"].Value, synoptic.DayOfWeek.ToString(), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Theory]
    [InlineData("al112017-irma", 5540)]
    [InlineData("al142018-michael", 3236)]
    [InlineData("al062018-florence", 3279)]
    [InlineData("al092017-harvey", 2092)]
    [InlineData("al142016-matthew", 5458)]
    [InlineData("al182012-sandy", 2227)]
    [InlineData("al092016-hermine", 4631)]
    public void Reading_TablesWrittenOut_GivesEveryRowBack(string storm, int rows)
    {
        var table = File.ReadLines(Path.Combine(Shared.Folder($"nhc-tables/{storm}"), "wndprb.csv")).Skip(1).Select(line => line.Split(',')).ToList();
        var read = table.GroupBy(cells => cells[1]).SelectMany(advisory => ProbabilityText.ReadGood(Written(advisory)).Rows).Select(Cells);

        Assert.Equal(rows, table.Count);
        Assert.Equal(table.Select(cells => string.Join(',', cells[3..])), read);
    }

    private static string Written(IEnumerable<string[]> advisory)
    {
        var text = ProbabilityText.Ian16;
        var rows = advisory.Select(cells => $"{cells[3],-14} {cells[4]} {Percent(cells[5])}" + string.Concat(
            Enumerable.Range(0, 6).Select(k => $" {Percent(cells[6 + 2 * k]),3}({Percent(cells[7 + 2 * k])})")));
        return text[..text.IndexOf("KEY WEST FL    34", StringComparison.Ordinal)] + string.Join('\n', rows) + "\n\n$$\n";
    }

    private static string Percent(string cell) => cell == "0" ? " X" : cell.PadLeft(2);

    private static string Cells(WindProbabilityRow row) =>
        $"{row.Location},{row.WindKt},{row.Periods[0].CumulativePercent},"
        + string.Join(',', row.Periods.Skip(1).Select(period => $"{period.OnsetPercent},{period.CumulativePercent}"));

    private static List<WindProbabilityAdvisory> All() => [.. Shared.Files("nhc-pws", "*.txt").Select(Read)];

    private static WindProbabilityAdvisory Read(string file)
    {
        var result = WindProbabilityReader.Read(File.ReadAllBytes(file));
        Assert.True(result.IsGood, $"{file}: {string.Join('\n', result.Faults)}");
        return result.Value!;
    }

    [GeneratedRegex(@"^\s*TIME\s+(?<hour>\d\d)Z (?<day>[A-Z]{3})", RegexOptions.Multiline)]
    private static partial Regex FirstPeriod();
}
