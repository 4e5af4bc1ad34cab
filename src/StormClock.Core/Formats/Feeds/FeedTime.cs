using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Times of lists: ISO 8601 as in Atom, or those of mail as in RSS ("Wed, 28 Sep 2022 02:55:19 GMT").</summary>
internal static partial class FeedTime
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>Hours east of Greenwich of the zones that mail may name (RFC 822, 5.1).</summary>
    private static readonly Dictionary<string, string> Zones = new(StringComparer.OrdinalIgnoreCase)
    {
        ["GMT"] = "+00:00", ["UT"] = "+00:00", ["UTC"] = "+00:00", ["Z"] = "+00:00",
        ["EDT"] = "-04:00", ["EST"] = "-05:00", ["CDT"] = "-05:00", ["CST"] = "-06:00",
        ["MDT"] = "-06:00", ["MST"] = "-07:00", ["PDT"] = "-07:00", ["PST"] = "-08:00",
    };

    /// <summary>Null when the text is no such time.</summary>
    public static Instant? Parse(string text) => CapTime.Parse(text) ?? OfMail(text);

    private static Instant? OfMail(string text)
    {
        var match = Mail().Match(text);
        if (!match.Success) return null;

        var month = Array.IndexOf(Months, match.Groups["month"].Value.ToLowerInvariant()) + 1;
        var zone = match.Groups["zone"].Value;
        var offset = zone[0] is '+' or '-' ? zone : Zones.GetValueOrDefault(zone, "");
        var seconds = match.Groups["second"].Success ? match.Groups["second"].Value : "00";
        var day = int.Parse(match.Groups["day"].ValueSpan, CultureInfo.InvariantCulture);
        return offset.Length == 0 ? null : CapTime.Parse(string.Create(
            CultureInfo.InvariantCulture,
            $"{match.Groups["year"].Value}-{month:00}-{day:00}T{match.Groups["time"].Value}:{seconds}{offset}"));
    }

    [GeneratedRegex(@"^(?:[A-Za-z]{3},\s*)?(?<day>\d{1,2})\s+(?<month>[A-Za-z]{3})\s+(?<year>\d{4})\s+(?<time>\d{2}:\d{2})(?::(?<second>\d{2}))?\s+(?<zone>[A-Za-z]{1,3}|[+-]\d{4})$", RegexOptions.CultureInvariant)]
    private static partial Regex Mail();
}
