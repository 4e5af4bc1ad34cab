using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.LocalStatement;

/// <summary>One part of a statement: where it is for, which events it tells of, and its words.</summary>
/// <param name="Words">Lines below the codes, up to the end mark.</param>
internal sealed partial record StatementSegment(UgcLine Ugc, IReadOnlyList<(VtecEvent Told, string Line)> Events, IReadOnlyList<string> Words)
{
    /// <summary>Offices west of the date line, whose polygons may count longitude either way; their zones tell the place.</summary>
    private static readonly string[] OfficesFarWest = ["PGUM", "NSTU"];

    /// <summary>Lines "...HIGH WIND WARNING IN EFFECT UNTIL NOON EDT TODAY..." without the dots.</summary>
    public string Headline => string.Join(' ', HeadlineText().Matches(string.Join('\n', Words)).Select(match => match.Groups["text"].Value.ReplaceLineEndings(" ")));

    /// <summary>
    /// What the local office says of the wind in its own words, kept for people to read: the stretch of tropical storm or
    /// hurricane force wind, and the peak of the forecast.
    /// </summary>
    public IEnumerable<AlertGeocode> WindWords =>
        Words.Select(line => WindLine().Match(line)).Where(match => match.Success).Select(match => new AlertGeocode(match.Groups["what"].Value, match.Groups["when"].Value));

    public AlertArea Area => new(Place(), Polygon(), [], [.. Ugc.Codes.Select(code => new AlertGeocode("UGC", code))]);

    /// <summary>The names of the zones, each with a dash behind it.</summary>
    private string Place() => string.Join(' ', Words.TakeWhile(line => line.EndsWith('-'))).TrimEnd('-');

    /// <summary>"LAT...LON 3037 9379 3057 9375 …": hundredths of a degree north and west.</summary>
    private IReadOnlyList<AlertPolygon> Polygon()
    {
        var shape = LatLon().Match(string.Join('\n', Words));
        if (!shape.Success || Events.Any(one => OfficesFarWest.Contains(one.Told.Office))) return [];
        var numbers = shape.Groups["number"].Captures.Select(number => int.Parse(number.Value, System.Globalization.CultureInfo.InvariantCulture) / 100.0).ToList();
        var ring = numbers.Chunk(2).Where(pair => pair.Length == 2).Select(pair => new GeoPoint(pair[0], -pair[1])).ToList();
        if (ring.Count < 3 || numbers.Count % 2 != 0 || ring.Any(point => point.LatDeg > 90 || point.LonDeg < -180)) return [];
        return [new AlertPolygon([.. ring, ring[0]])];
    }

    [GeneratedRegex(@"^\.\.\.(?<text>[^.\n][^\n]*(?:\n[^\n]+){0,3}?)\.\.\.$", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex HeadlineText();

    [GeneratedRegex(@"^-\s*(?<what>Window for (?:Tropical Storm|Hurricane)[ -]force winds|Peak Wind Forecast)\s*:\s*(?<when>\S.{0,120})$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WindLine();

    [GeneratedRegex(@"^LAT\.\.\.LON(?:\s+(?<number>[0-9]{3,5}))+", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex LatLon();
}
