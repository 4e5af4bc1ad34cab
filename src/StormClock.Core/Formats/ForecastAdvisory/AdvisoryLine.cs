using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>The kinds of line that carry numbers, one method each; layouts of 1991 to 2025.</summary>
internal static partial class AdvisoryLine
{
    private const string Position = @"(?<lat>[0-9]{1,2}(?:\.[0-9]+)?)\s*(?<ns>[NS])\s+(?<lon>[0-9]{1,3}(?:\.[0-9]+)?)\s*(?<ew>[EW])";

    /// <summary>"HURRICANE CENTER LOCATED NEAR 16.2N  72.7W AT 03/0300Z", also LOCATED INLAND NEAR and DISSIPATED NEAR.</summary>
    [GeneratedRegex(@"CENTER\s+(?<how>LOCATED(?:\s+INLAND)?|DISSIPATED)\s+NEAR\s+" + Position + @"\s+AT\s+(?<day>[0-9]{1,2})/(?<time>[0-9]{4})Z(?<words>.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex CentreNow();

    /// <summary>"AT 03/0000Z CENTER WAS LOCATED NEAR 16.1N  71.8W".</summary>
    [GeneratedRegex(@"^AT\s+(?<day>[0-9]{1,2})/(?<time>[0-9]{4})Z\s+CENTER\s+WAS\s+LOCATED(?:\s+INLAND)?\s+NEAR\s+" + Position + "(?<words>.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex CentreBefore();

    /// <summary>"FORECAST VALID 03/1200Z 17.2N  75.4W...INLAND", also without a position before DISSIPATED.</summary>
    [GeneratedRegex(@"^(?:FORECAST|OUTLOOK)\s+VALID\s+(?<day>[0-9]{1,2})/(?<time>[0-9]{4})Z(?:\s+" + Position + ")?(?<words>.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Valid();

    /// <summary>"MAX SUSTAINED WINDS 130 KT WITH GUSTS TO 160 KT." and "MAX WIND 125 KT...GUSTS 150 KT."</summary>
    [GeneratedRegex(@"^MAX\s+(?:SUSTAINED\s+)?WINDS?\s+(?<wind>[0-9]{1,3})\s*KT(?:[\s.]+(?:WITH\s+)?GUSTS\s+(?:TO\s+)?(?<gust>[0-9]{1,3})\s*KT)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Wind();

    /// <summary>"34 KT...150NE 100SE  60SW 100NW." and of old "RADIUS IN NM OF 34 KT WINDS  50NE  50SE  50SW  50NW."</summary>
    [GeneratedRegex(@"^(?:RADIUS\s+IN\s+NM\s+OF\s+)?(?<kt>[0-9]{1,3})\s*KT(?:\.+|\s+WINDS)\s*(?<ne>[0-9]{1,3})\s*NE\s+(?<se>[0-9]{1,3})\s*SE\s+(?<sw>[0-9]{1,3})\s*SW\s+(?<nw>[0-9]{1,3})\s*NW\.*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Radii();

    /// <summary>A line that plainly begins a point, whether or not it can be read.</summary>
    [GeneratedRegex(@"\bVALID\s+(?:AT\s+)?[0-9]|CENTER\s+WAS\s+LOCATED|^REPEAT\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex SpeaksOfPoint();

    /// <summary>A line that plainly tells a wind or its reach, whether or not it can be read.</summary>
    [GeneratedRegex(@"^MAX\s|^(?:RADIUS\s.*)?[0-9]+\s*KT\b|[0-9]\s*(?:NE|SE|SW|NW)\b.*[0-9]\s*(?:NE|SE|SW|NW)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex SpeaksOfWind();

    /// <summary>"12 FT SEAS..270NE 210SE 150SW 150NW." and its old form are about waves, not wind.</summary>
    [GeneratedRegex(@"\b[0-9]+\s*(?:FT|M)\s+(?:FT\s+)?SEAS\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Seas();

    /// <summary>The last lines of a whole message; a text without any of them was cut off on its way.</summary>
    [GeneratedRegex(@"^(?:NEXT\s+ADVISORY\s+AT\b|FORECASTER\b|\$\$|NNNN)|THIS\s+IS\s+THE\s+LAST\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Closing();

    /// <summary>The sentence, which may run over a line end, that no further advisory follows.</summary>
    [GeneratedRegex(@"THIS\s+IS\s+THE\s+LAST\s+(?:FORECAST/|MARINE\s+)?ADVISORY\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Last();

    /// <summary>The position of a match, null when it has none or it is not on the globe.</summary>
    public static GeoPoint? PointOf(Match match)
    {
        if (!match.Groups["lat"].Success) return null;
        var lat = Number(match, "lat") * (Is(match, "ns", "S") ? -1 : 1);
        var lon = Number(match, "lon") * (Is(match, "ew", "W") ? -1 : 1);
        if (Math.Abs(lat) > 90 || Math.Abs(lon) > 180) return null;
        return new GeoPoint(lat, lon == -180 ? 180 : lon);
    }

    public static QuadrantRadii RadiiOf(Match match) =>
        new(Number(match, "ne"), Number(match, "se"), Number(match, "sw"), Number(match, "nw"));

    public static Instant? TimeOf(Match match, Instant issued) =>
        AdvisoryTime.Nearest((int)Number(match, "day"), (int)Number(match, "time"), issued);

    public static double Number(Match match, string group) =>
        double.Parse(match.Groups[group].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static bool Is(Match match, string group, string value) =>
        match.Groups[group].Value.Equals(value, StringComparison.OrdinalIgnoreCase);
}
