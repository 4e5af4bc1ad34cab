using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.WindProbabilities;

/// <summary>Reads the lines below the date one by one and gathers the rows of the table, with every fault.</summary>
internal sealed class ProbabilityTable
{
    private readonly List<ReadFault> faults = [];
    private readonly List<WindProbabilityRow> rows = [];
    private readonly HashSet<(string Location, int WindKt)> seen = [];
    private bool begun;
    private bool closed;

    public IReadOnlyList<WindProbabilityRow> Rows => rows;

    public void Read(string line, int number)
    {
        if (line.Length == 0 || closed) return;
        if (ProbabilityLine.Columns().Match(line) is { Success: true } columns)
        {
            begun = true;
            if (!ProbabilityLine.HasUsualColumns(columns)) Fault(number, "the columns are not for 12, 24, 36, 48, 72, 96 and 120 hours");
        }
        else if (!begun)
        {
            if (ProbabilityLine.SpeaksOfChances().IsMatch(line)) Fault(number, "chances above the line FORECAST HOUR that says for which hours they are");
        }
        else if (ProbabilityLine.Closing().IsMatch(line)) closed = true;
        else if (ProbabilityLine.Row().Match(line) is { Success: true } row)
        {
            Keep(row.Groups["place"].Value, row.Groups["kt"].Value, ProbabilityLine.PeriodsOf(row), number);
        }
        else if (!ProbabilityLine.Ruling().IsMatch(line)) Fault(number, $"is no row of the table (place, wind and seven chances): \"{Shortened(line)}\"");
    }

    /// <summary>All faults, with those that only the end of the text shows.</summary>
    public IReadOnlyList<ReadFault> FaultsAtEnd(int lastLine)
    {
        if (!begun) Fault(lastLine, "no table: the line FORECAST HOUR (12) (24) (36) (48) (72) (96) (120) is missing");
        else if (!closed) Fault(lastLine, "the text ends before its closing lines ($$, FORECASTER): fetch it again");
        return faults;
    }

    private void Keep(string location, string wind, PeriodChance[] periods, int number)
    {
        var windKt = int.Parse(wind, System.Globalization.CultureInfo.InvariantCulture);
        if (!AddUp(periods)) Fault(number, "the chances do not add up: each total must be the one before it plus the onset, and at most 100");
        else if (!seen.Add((location, windKt))) Fault(number, $"a second row of {windKt} kt for {location}");
        else rows.Add(new(location, windKt, periods));
    }

    /// <summary>Each number was rounded by itself, so that they may be 1 apart.</summary>
    private static bool AddUp(PeriodChance[] periods) =>
        periods[^1].CumulativePercent <= 100
        && periods.Zip(periods.Skip(1)).All(pair =>
            pair.Second.CumulativePercent >= pair.First.CumulativePercent
            && Math.Abs(pair.First.CumulativePercent + pair.Second.OnsetPercent - pair.Second.CumulativePercent) <= 1);

    private static string Shortened(string line) => line.Length <= 60 ? line : line[..60] + "…";

    private void Fault(int line, string reason) => faults.Add(ReadFault.At(line, reason));
}
