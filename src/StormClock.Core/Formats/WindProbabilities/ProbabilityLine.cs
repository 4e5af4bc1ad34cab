using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.WindProbabilities;

/// <summary>The kinds of line that make the table, in the layout of 2012 to 2025.</summary>
internal static partial class ProbabilityLine
{
    /// <summary>Hours at which the seven columns end.</summary>
    public static readonly int[] Hours = [12, 24, 36, 48, 72, 96, 120];

    /// <summary>"FORECAST HOUR    (12)   (24)    (36)    (48)    (72)    (96)   (120)".</summary>
    [GeneratedRegex(@"^FORECAST\s+HOUR(?<hours>(?:\s*\(\s*[0-9]{1,3}\))+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Columns();

    /// <summary>"LOCATION       KT" and the rule of dashes above it.</summary>
    [GeneratedRegex(@"^(?:LOCATION\s+KT|[-\s]+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Ruling();

    /// <summary>"NAPLES FL      34  2  34(36)  42(78)   7(85)   4(89)   1(90)   X(90)".</summary>
    [GeneratedRegex(@"^(?<place>\S.{0,23}?)\s+(?<kt>34|50|64)\s+(?<first>X|[0-9]{1,3})(?:\s+(?<onset>X|[0-9]{1,3})\(\s*(?<total>X|[0-9]{1,3})\)){6}$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Row();

    /// <summary>Chances beside each other, wherever they stand.</summary>
    [GeneratedRegex(@"[X0-9]\(\s*[X0-9]+\).*[X0-9]\(\s*[X0-9]+\)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex SpeaksOfChances();

    /// <summary>The last lines of a whole message.</summary>
    [GeneratedRegex(@"^(?:\$\$|FORECASTER\b|NNNN)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Closing();

    public static bool HasUsualColumns(Match columns) =>
        Digits().Matches(columns.Groups["hours"].Value).Select(hour => Whole(hour.Value)).SequenceEqual(Hours);

    /// <summary>The seven chances; in the first period onset and total are the same number, written once.</summary>
    public static PeriodChance[] PeriodsOf(Match row)
    {
        var first = Percent(row.Groups["first"].Value);
        var (onsets, totals) = (row.Groups["onset"].Captures, row.Groups["total"].Captures);
        return [new(Hours[0], first, first), .. onsets.Select((onset, k) => new PeriodChance(Hours[k + 1], Percent(onset.Value), Percent(totals[k].Value)))];
    }

    private static int Percent(string text) => text is "X" or "x" ? 0 : Whole(text);

    private static int Whole(string digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();
}
