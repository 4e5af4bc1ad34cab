using System.Globalization;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Cap;

/// <summary>Shapes of an alert area, written as latitude, longitude pairs in degrees.</summary>
internal static class CapShape
{
    private static readonly char[] Blanks = [' ', '\t', '\r', '\n'];

    /// <summary>
    /// "38.47,-120.14 38.34,-119.95 …" as a closed ring. A ring with a pair that cannot be read comes back empty, so that
    /// its area counts as undecidable and not as free of it.
    /// </summary>
    public static AlertPolygon Polygon(string text)
    {
        var ring = new List<GeoPoint>();
        foreach (var pair in text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries))
        {
            if (Point(pair) is not { } point) return new AlertPolygon([]);
            ring.Add(point);
        }

        if (ring.Count > 0 && ring[0] != ring[^1]) ring.Add(ring[0]);
        return new AlertPolygon(ring);
    }

    /// <summary>"32.9525,-115.5527 25" with the radius in kilometres; an unreadable one has a radius of NaN.</summary>
    public static AlertCircle Circle(string text)
    {
        var parts = text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
        return parts.Length == 2 && Point(parts[0]) is { } centre && Number(parts[1]) is { } radius
            ? new AlertCircle(centre, radius)
            : new AlertCircle(default, double.NaN);
    }

    private static GeoPoint? Point(string pair)
    {
        var comma = pair.IndexOf(',', StringComparison.Ordinal);
        if (comma < 0 || Number(pair[..comma]) is not { } lat || Number(pair[(comma + 1)..]) is not { } lon) return null;
        if (Math.Abs(lat) > 90 || Math.Abs(lon) > 180) return null;
        return new GeoPoint(lat, lon == -180 ? 180 : lon);
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
