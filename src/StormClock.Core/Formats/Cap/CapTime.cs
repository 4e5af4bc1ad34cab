using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime.Text;

namespace StormClock.Core.Formats.Cap;

/// <summary>Times in alerts: ISO 8601 with an offset, and the end in a VTEC code.</summary>
internal static partial class CapTime
{
    private static readonly LocalDateTimePattern Local = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.FFFFFFFFF");

    private static readonly InstantPattern Vtec = InstantPattern.Create("yyMMdd'T'HHmm'Z'", CultureInfo.InvariantCulture);

    /// <summary>"2027-09-12T10:00:00-04:00"; "-00:00" and "Z" are UTC. Null when there is no offset or no such time.</summary>
    public static Instant? Parse(string text)
    {
        if (text.Length == 0) return null;
        if (Usual(text) is { } usual) return usual;
        var match = WithOffset().Match(text);
        if (!match.Success) return null;

        var seconds = match.Groups["seconds"].Success ? match.Groups["seconds"].Value : ":00";
        var local = Local.Parse(match.Groups["minutes"].Value.ToUpperInvariant() + seconds);
        if (!local.Success || OffsetOf(match) is not { } offset) return null;

        // A local time at the very edge of the calendar cannot be moved by an offset.
        return local.Value.Year is > 1900 and < 9000 ? local.Value.WithOffset(offset).ToInstant() : null;
    }

    /// <summary>
    /// Latest end of the events in VTEC codes such as /O.NEW.KMHX.TR.W.1015.270912T1000Z-270914T0000Z/, cancelled and
    /// expired ones apart. Null when none has an end: all zeros are "until further notice".
    /// </summary>
    public static Instant? VtecEnd(string text)
    {
        Instant? latest = null;
        foreach (Match match in VtecCode().Matches(text))
        {
            if (match.Groups["action"].Value is "CAN" or "EXP" or "UPG" or "ROU") continue;
            var end = Vtec.Parse(match.Groups["end"].Value);
            if (!end.Success) return null;
            if (latest is null || end.Value > latest) latest = end.Value;
        }

        return latest;
    }

    /// <summary>The form that nearly all have, without the search for any other; null leaves it to that.</summary>
    private static Instant? Usual(ReadOnlySpan<char> text)
    {
        if (text is not [_, _, _, _, '-', _, _, '-', _, _, 'T', _, _, ':', _, _, ':', _, _, '+' or '-', _, _, ':', _, _]) return null;

        var (year, month, day) = (Digits(text[..4]), Digits(text[5..7]), Digits(text[8..10]));
        var (hour, minute, second) = (Digits(text[11..13]), Digits(text[14..16]), Digits(text[17..19]));
        var (offsetHours, offsetMinutes) = (Digits(text[20..22]), Digits(text[23..25]));
        if (year is <= 1900 or >= 9000 || month is < 1 or > 12 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month)) return null;
        if (hour is < 0 or > 23 || minute is < 0 or > 59 || second is < 0 or > 59 || offsetHours is < 0 or > 14 || offsetMinutes is < 0 or > 59) return null;

        var offset = Duration.FromMinutes((offsetHours * 60) + offsetMinutes);
        var utc = Instant.FromUtc(year, month, day, hour, minute, second);
        return text[19] == '-' ? utc + offset : utc - offset;
    }

    /// <summary>-1 when there is anything but digits.</summary>
    private static int Digits(ReadOnlySpan<char> text)
    {
        var value = 0;
        foreach (var digit in text)
        {
            if (!char.IsAsciiDigit(digit)) return -1;
            value = (value * 10) + (digit - '0');
        }

        return value;
    }

    private static Offset? OffsetOf(Match match)
    {
        if (!match.Groups["sign"].Success) return Offset.Zero;
        var hours = int.Parse(match.Groups["hour"].ValueSpan, CultureInfo.InvariantCulture);
        var minutes = int.Parse(match.Groups["minute"].ValueSpan, CultureInfo.InvariantCulture);
        if (hours > 14 || minutes > 59) return null;
        var offset = Offset.FromHoursAndMinutes(hours, minutes);
        return match.Groups["sign"].Value == "-" ? -offset : offset;
    }

    [GeneratedRegex(@"^(?<minutes>[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2})(?<seconds>:[0-9]{2}(?:\.[0-9]{1,9})?)?(?:Z|(?<sign>[+-])(?<hour>[0-9]{2}):?(?<minute>[0-9]{2}))$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WithOffset();

    [GeneratedRegex(@"/O\.(?<action>[A-Z]{3})\.[A-Z]{4}\.[A-Z]{2}\.[A-Z]\.[0-9]{4}\.[0-9]{6}T[0-9]{4}Z-(?<end>[0-9]{6}T[0-9]{4}Z)/", RegexOptions.CultureInvariant)]
    private static partial Regex VtecCode();
}
