using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Formats.Points;

/// <summary>A stretch of time.</summary>
internal readonly record struct Stretch(Instant From, Instant To);

/// <summary>Reads stretches of time as the forecasts write them.</summary>
internal static partial class StretchText
{
    /// <summary>A forecast reaches eight days or so; a chance that holds throughout is one stretch (R). More is a mistake.</summary>
    private static readonly Duration Longest = Duration.FromDays(16);

    /// <summary>"2022-02-03T06:00:00+00:00/PT3H" or ".../P1DT2H" or two times; null when it is none or not after its beginning.</summary>
    public static Stretch? Interval(string? text)
    {
        var slash = text?.IndexOf('/', StringComparison.Ordinal) ?? -1;
        if (slash < 0 || CapTime.Parse(text![..slash]) is not { } from) return null;
        var end = text[(slash + 1)..];
        return Between(from, LengthOf(end) is { } length ? from + length : CapTime.Parse(end));
    }

    public static Stretch? Between(Instant? from, Instant? to) =>
        from is { } first && to is { } last && last > first && last - first <= Longest ? new Stretch(first, last) : null;

    private static Duration? LengthOf(string text)
    {
        var length = Iso().Match(text);
        return length.Success
            ? Duration.FromDays(Part(length, "days")) + Duration.FromHours(Part(length, "hours")) + Duration.FromMinutes(Part(length, "minutes"))
            : null;
    }

    private static int Part(Match length, string name) =>
        length.Groups[name].Success ? int.Parse(length.Groups[name].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(@"^P(?:(?<days>[0-9]{1,3})D)?(?:T(?:(?<hours>[0-9]{1,4})H)?(?:(?<minutes>[0-9]{1,5})M)?)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Iso();
}
