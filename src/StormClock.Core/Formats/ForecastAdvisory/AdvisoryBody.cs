using System.Text.RegularExpressions;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>Reads the lines below the date one by one and gathers the points they describe, with every fault.</summary>
internal sealed class AdvisoryBody(AdvisoryHeading heading)
{
    private readonly List<ReadFault> faults = [];
    private readonly List<PointDraft> forecast = [];
    private readonly Dictionary<Instant, int> lineOf = [];
    private PointDraft? now;
    private PointDraft? before;
    private PointDraft? current;
    private bool closed;

    /// <summary>The point above was refused, so its wind and radii need no fault of their own.</summary>
    private bool refused;

    public void Read(string line, int number)
    {
        if (line.Length == 0) return;
        if (AdvisoryLine.Closing().IsMatch(line)) closed = true;

        if (AdvisoryLine.CentreBefore().Match(line) is { Success: true } was) ReadBefore(was, number);
        else if (AdvisoryLine.CentreNow().Match(line) is { Success: true } located) ReadNow(located, number);
        else if (AdvisoryLine.Valid().Match(line) is { Success: true } valid) ReadForecast(valid, number);
        else if (AdvisoryLine.Wind().Match(line) is { Success: true } wind) ReadWind(wind, number);
        else if (AdvisoryLine.Radii().Match(line) is { Success: true } radii) ReadRadii(radii, number);
        else if (IsUnread(line)) Fault(number, $"cannot be understood: \"{Shortened(line)}\"");
    }

    /// <summary>All faults, with those that only the end of the text shows.</summary>
    public IReadOnlyList<ReadFault> FaultsAtEnd(int lastLine)
    {
        if (now is null) Fault(heading.Line, "no line CENTER LOCATED NEAR with position and time below the date");
        if (!closed) Fault(lastLine, "the text ends before its closing lines (NEXT ADVISORY, FORECASTER, $$): fetch it again");
        return faults;
    }

    public (CyclonePoint Now, CyclonePoint? Before, IReadOnlyList<CyclonePoint> Forecast) Finish() =>
        (now!.Finish(), before?.Finish(), [.. forecast.Select(point => point.Finish())]);

    /// <summary>1-based line of the point that stands for a moment.</summary>
    public int LineOf(Instant valid) => lineOf[valid];

    private void ReadNow(Match match, int number)
    {
        if (Draft(match, number, heading.Kind + match.Groups["how"].Value + match.Groups["words"].Value) is not { } point) return;

        // The line comes twice, the second time as REPEAT; the first stands, and only the second may add INLAND.
        if (now is null) (current, now, lineOf[point.Valid]) = (point, point, number);
        else if (AdvisoryWords.SaysInland(match.Groups["words"].Value)) now.GoInland();
    }

    private void ReadBefore(Match match, int number)
    {
        current = null;
        before = Draft(match, number, match.Groups["words"].Value);
    }

    private void ReadForecast(Match match, int number)
    {
        (current, refused) = (null, true);
        var words = match.Groups["words"].Value;
        if (Draft(match, number, words) is not { } point) return;

        var gone = AdvisoryWords.NatureOf(words) == CycloneNature.Dissipated;
        if (AdvisoryLine.PointOf(match) is null && !gone) Fault(number, "the forecast point has no position");
        else if (point.Valid <= AdvisoryTime.Synoptic(heading.Issued)) Fault(number, "the forecast time is not after the advisory");
        else if (forecast.Count > 0 && point.Valid < forecast[^1].Valid) Fault(number, "the forecast time is before that of the point above");
        else Keep(point, number);
    }

    /// <summary>A second point for the same moment is a slip of the pen (seen in 1994); the first one stands.</summary>
    private void Keep(PointDraft point, int number)
    {
        (current, refused) = (point, false);
        if (forecast.Count > 0 && point.Valid == forecast[^1].Valid) return;
        forecast.Add(point);
        lineOf[point.Valid] = number;
    }

    private void ReadWind(Match match, int number)
    {
        double? gust = match.Groups["gust"].Success ? AdvisoryLine.Number(match, "gust") : null;
        if (current?.TrySetWind(AdvisoryLine.Number(match, "wind"), gust) is not true && !refused)
        {
            Fault(number, "a wind that belongs to no point; the line with its time is missing above");
        }
    }

    private void ReadRadii(Match match, int number)
    {
        var threshold = (int)AdvisoryLine.Number(match, "kt");
        if (threshold is not (34 or 50 or 64)) Fault(number, $"wind radii of {threshold} kt; only 34, 50 and 64 are known");
        else if (current?.TrySetRadii(threshold, AdvisoryLine.RadiiOf(match)) is not true && !refused)
        {
            Fault(number, "wind radii that belong to no point; the line with its time is missing above");
        }
    }

    private PointDraft? Draft(Match match, int number, string words)
    {
        if (AdvisoryLine.TimeOf(match, heading.Issued) is not { } valid)
        {
            Fault(number, "the day or the hour does not exist");
        }
        else if (valid > heading.Issued + AdvisoryTime.Farthest || valid < heading.Issued - Duration.FromDays(1))
        {
            Fault(number, "the time is more than 6 days after the advisory or a day before it");
        }
        else if (match.Groups["lat"].Success && AdvisoryLine.PointOf(match) is null)
        {
            Fault(number, "the position is not on the globe");
        }
        else
        {
            return new PointDraft(valid, AdvisoryLine.PointOf(match), AdvisoryWords.NatureOf(words), AdvisoryWords.SaysInland(words));
        }

        return null;
    }

    /// <summary>Prose away from the points may speak of knots as it likes.</summary>
    private bool IsUnread(string line) =>
        AdvisoryLine.SpeaksOfPoint().IsMatch(line)
        || (current is not null && AdvisoryLine.SpeaksOfWind().IsMatch(line) && !AdvisoryLine.Seas().IsMatch(line));

    private static string Shortened(string line) => line.Length <= 60 ? line : line[..60] + "…";

    private void Fault(int line, string reason) => faults.Add(ReadFault.At(line, reason));
}
