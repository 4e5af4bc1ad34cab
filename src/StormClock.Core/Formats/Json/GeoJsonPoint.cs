using System.Text.Json;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Json;

/// <summary>Where a feature is: its point, or else the middle of its polygon. Longitude comes first (RFC 7946).</summary>
internal static class GeoJsonPoint
{
    private const int MostCorners = 1000;

    /// <summary>Null when there is no point on the globe.</summary>
    public static GeoPoint? Of(JsonElement? geometry) => geometry.Child("type").Text() switch
    {
        "Point" => Position(geometry.Child("coordinates")),
        "Polygon" => Middle([.. geometry.Child("coordinates").Items().Take(1).SelectMany(ring => ((JsonElement?)ring).Items()).Take(MostCorners)]),
        "GeometryCollection" => OfMany(geometry.Child("geometries")),
        _ => null,
    };

    private static GeoPoint? OfMany(JsonElement? geometries)
    {
        var simple = geometries.Items().Where(one => one.Child("type").Text() is "Point" or "Polygon").Take(10).ToList();
        return simple.OrderBy(one => one.Child("type").Text() == "Point" ? 0 : 1).Select(one => Of(one)).FirstOrDefault(point => point is not null);
    }

    /// <summary>The mean of the corners; the last one repeats the first. Longitudes count from the first corner, so that 180° is no edge.</summary>
    private static GeoPoint? Middle(List<JsonElement> ring)
    {
        var corners = ring.SkipLast(1).Select(corner => Position(corner)).ToList();
        if (corners.Count < 3 || corners.Contains(null)) return null;
        var first = corners[0]!.Value;
        var east = corners.Average(corner => Math.IEEERemainder(corner!.Value.LonDeg - first.LonDeg, 360));
        return new GeoPoint(corners.Average(corner => corner!.Value.LatDeg), Math.IEEERemainder(first.LonDeg + east, 360));
    }

    private static GeoPoint? Position(JsonElement? pair)
    {
        var numbers = pair.Items().Take(2).Select(number => ((JsonElement?)number).Number()).ToList();
        return numbers is [{ } lon, { } lat] && Math.Abs(lat) <= 90 && Math.Abs(lon) <= 180 ? new GeoPoint(lat, lon) : null;
    }
}
