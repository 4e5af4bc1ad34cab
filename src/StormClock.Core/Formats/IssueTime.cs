using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Formats;

/// <summary>When a text was issued: its date line in local time with the letters of the zone, and the day and hour in UTC of its heading.</summary>
internal static partial class IssueTime
{
    private const int LinesOfHeading = 40;

    /// <summary>Hours behind UTC of the zones that the US offices write (M).</summary>
    private static readonly Dictionary<string, int> HoursBehind = new(StringComparer.OrdinalIgnoreCase)
    {
        ["UTC"] = 0, ["GMT"] = 0, ["Z"] = 0, ["AZOST"] = 0, ["CVT"] = 1, ["AZOT"] = 1, ["ADT"] = 3, ["AST"] = 4, ["EDT"] = 4, ["EST"] = 5,
        ["CDT"] = 5, ["CST"] = 6, ["MDT"] = 6, ["MST"] = 7, ["PDT"] = 7, ["PST"] = 8, ["AKDT"] = 8, ["AKST"] = 9, ["HDT"] = 9,
        ["HST"] = 10, ["SST"] = 11, ["CHST"] = -10,
    };

    private static readonly string[] MonthNames = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    /// <summary>The moment; null when there is no date line, or its zone is not known and no heading has the hour in UTC.</summary>
    public static Instant? Of(string[] lines)
    {
        var head = lines.Take(LinesOfHeading).ToList();
        var dated = head.Select(line => DateLine().Match(line)).FirstOrDefault(match => match.Success);
        if (dated is null || LocalOf(dated) is not { } local) return null;
        if (HoursBehind.TryGetValue(dated.Groups["zone"].Value, out var behind)) return local + Duration.FromHours(behind);
        var heading = head.Select(line => Heading().Match(line)).FirstOrDefault(match => match.Success);
        return heading is null ? null : AdvisoryTime.Nearest(Whole(heading, "day"), Whole(heading, "time"), local);
    }

    /// <summary>The local time as if it were UTC.</summary>
    private static Instant? LocalOf(Match date)
    {
        var month = Array.IndexOf(MonthNames, date.Groups["month"].Value.ToUpperInvariant()) + 1;
        var (year, day) = (Whole(date, "year"), Whole(date, "day"));
        if (month == 0 || year is < 1950 or > 2999 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month)) return null;
        return HourOf(date) is { } minutes ? Instant.FromUtc(year, month, day, 0, 0) + Duration.FromMinutes(minutes) : null;
    }

    /// <summary>Minutes after midnight of "200 AM", "11 PM", "NOON" or "0900" without AM and PM.</summary>
    private static int? HourOf(Match date)
    {
        if (date.Groups["word"].Success) return date.Groups["word"].Value.Equals("NOON", StringComparison.OrdinalIgnoreCase) ? 12 * 60 : 0;
        var time = Whole(date, "time");
        var (hour, minute) = date.Groups["time"].Length <= 2 ? (time, 0) : (time / 100, time % 100);
        if (minute > 59) return null;
        if (!date.Groups["half"].Success) return hour <= 23 ? hour * 60 + minute : null;
        if (hour is < 1 or > 12) return null;
        var afternoon = date.Groups["half"].Value.Equals("PM", StringComparison.OrdinalIgnoreCase) ? 12 : 0;
        return (hour % 12 + afternoon) * 60 + minute;
    }

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    /// <summary>"200 AM EDT Mon Sep 26 2022", also with the time in a second zone behind it.</summary>
    [GeneratedRegex(@"^(?:(?<time>[0-9]{1,4})(?:\s+(?<half>AM|PM))?|(?:12\s+)?(?<word>NOON|MIDNIGHT))\s+(?<zone>[A-Z]{1,5})\s+(?:SUN|MON|TUE|WED|THU|FRI|SAT)\s+(?<month>[A-Z]{3})\s+(?<day>[0-9]{1,2})\s+(?<year>[0-9]{4})\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DateLine();

    /// <summary>"WTNT34 KNHC 260549".</summary>
    [GeneratedRegex(@"^[A-Z]{4}[0-9]{2}\s+[A-Z]{4}\s+(?<day>[0-9]{2})(?<time>[0-9]{4})\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Heading();
}
