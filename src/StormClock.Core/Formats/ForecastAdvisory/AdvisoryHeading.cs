using System.Globalization;
using System.Text.RegularExpressions;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>What the lines above the first position say: which storm, which advisory, when, and of what sort.</summary>
/// <param name="Line">1-based line of the date, where the body begins.</param>
/// <param name="Correction">Letter of the correction (A first), null when it is none.</param>
internal sealed partial record AdvisoryHeading(
    string StormId, string Name, string Number, Instant Issued, int Line, string Kind, bool Special, char? Correction)
{
    private const int MostLines = 40;

    /// <summary>The heading, or the fault that says which part of it is missing.</summary>
    public static ReadResult<AdvisoryHeading> Read(string[] lines)
    {
        var dateLine = Array.FindIndex(lines, 0, Math.Min(lines.Length, MostLines), line => DateLine().IsMatch(line));
        if (dateLine < 0) return ReadFault.At(1, "no date line such as 0300 UTC TUE SEP 27 2022 below the title");
        if (IssuedOf(lines[dateLine]) is not { } issued) return ReadFault.At(dateLine + 1, "the date of issue does not exist");

        var titleLine = Array.FindIndex(lines, 0, dateLine, line => line.Contains("NUMBER", StringComparison.OrdinalIgnoreCase));
        var heading = string.Join(' ', lines[..dateLine]);
        var title = Title().Match(heading);
        if (!title.Success)
        {
            return ReadFault.At(Math.Max(titleLine, 0) + 1, "no title such as HURRICANE IAN FORECAST/ADVISORY NUMBER 16 or HURRICANE IAN WIND SPEED PROBABILITIES NUMBER 16 above the date");
        }

        return new AdvisoryHeading(
            StormIdOf(heading, title.Groups["name"].Value, issued),
            title.Groups["name"].Value.ToUpperInvariant(),
            title.Groups["number"].Value,
            issued,
            dateLine + 1,
            title.Groups["kind"].Value,
            title.Groups["special"].Success,
            CorrectionOf(heading, heading[title.Index..]));
    }

    private static Instant? IssuedOf(string line)
    {
        var date = DateLine().Match(line);
        var month = Array.IndexOf(MonthNames, date.Groups["month"].Value.ToUpperInvariant()) + 1;
        var (year, day, time) = (Whole(date, "year"), Whole(date, "day"), Whole(date, "time"));
        if (month == 0 || year is < 1950 or > 2999 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month)) return null;
        if (time / 100 > 23 || time % 100 > 59) return null;
        return Instant.FromUtc(year, month, day, time / 100, time % 100);
    }

    /// <summary>The id on the office line; messages before 1998 have none and get basin, name and year instead.</summary>
    public static string StormIdOf(string heading, string name, Instant issued)
    {
        var year = issued.InUtc().Year;
        var id = Id().Match(heading);
        if (!id.Success) return $"{BasinOf(heading)}-{name.ToUpperInvariant()}-{year}";

        var written = id.Groups["year"].Value;
        var full = written.Length == 4 ? written : FullYear(Whole(id, "year"), year).ToString(CultureInfo.InvariantCulture);
        return id.Groups["basin"].Value.ToUpperInvariant() + id.Groups["storm"].Value + full;
    }

    /// <summary>The year with those last two digits nearest to the year of issue.</summary>
    private static int FullYear(int twoDigits, int issueYear)
    {
        var year = issueYear / 100 * 100 + twoDigits;
        if (year > issueYear + 50) return year - 100;
        return year < issueYear - 50 ? year + 100 : year;
    }

    private static string BasinOf(string heading)
    {
        if (CentralPacific().IsMatch(heading)) return "CP";
        if (EasternPacific().IsMatch(heading)) return "EP";
        return Atlantic().IsMatch(heading) ? "AL" : "XX";
    }

    /// <summary>Letter of the correction that the heading or the title tells of.</summary>
    public static char? CorrectionOf(string heading, string title)
    {
        var letter = CorrectionLetter().Match(heading);
        if (letter.Success) return char.ToUpperInvariant(letter.Value[^1]);
        return title.Contains("CORRECT", StringComparison.OrdinalIgnoreCase) ? 'A' : null;
    }

    private static int Whole(Match match, string group) =>
        int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    private static readonly string[] MonthNames =
        ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    [GeneratedRegex(@"^(?<time>[0-9]{4})\s*(?:UTC|Z)\s+[A-Z]{3}\s+(?<month>[A-Z]{3})\s+(?<day>[0-9]{1,2})\s+(?<year>[0-9]{4})$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DateLine();

    [GeneratedRegex(@"\b(?<kind>POTENTIAL\s+TROPICAL\s+CYCLONE|POST-TROPICAL\s+CYCLONE|TROPICAL\s+(?:STORM|DEPRESSION|CYCLONE)|SUBTROPICAL\s+(?:STORM|DEPRESSION)|HURRICANE|(?:SUPER\s+)?TYPHOON|REMNANTS\s+OF|REMNANT\s+LOW(?:\s+OF)?|EXTRATROPICAL\s+(?:STORM|CYCLONE|LOW))\s+(?<name>[A-Z][A-Z'-]*(?:\s+[A-Z][A-Z'-]*)??)\s+(?<special>SPECIAL\s+)?(?:(?:FORECAST/|MARINE\s+)?ADVISORY|WIND\s+SPEED\s+PROBABILITIES)\s+NUMBER\s+(?<number>[0-9]{1,3})\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Title();

    [GeneratedRegex(@"\b(?<basin>AL|EP|CP|WP|IO|SH|SL)(?<storm>[0-9]{2})(?<year>[0-9]{4}|[0-9]{2})\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Id();

    /// <summary>The third group of a corrected message's WMO heading: CCA, CCB and so on.</summary>
    [GeneratedRegex(@"(?:\b[0-9]{6}|\bDDHHMM|\bALL)\s+CC[A-X]\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CorrectionLetter();

    [GeneratedRegex(@"\bPH(?:NL|FO)\b|TCMCP[0-9]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CentralPacific();

    [GeneratedRegex(@"\bWTPZ[0-9]|TCMEP[0-9]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EasternPacific();

    /// <summary>MIAWRKAM1 is the heading of the one message of 1991 at hand (D).</summary>
    [GeneratedRegex(@"\bWTNT[0-9]|TCMAT[0-9]|WRKAM[0-9]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Atlantic();
}
