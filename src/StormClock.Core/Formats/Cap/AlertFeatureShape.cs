using System.Text.Json;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Cap;

/// <summary>The geometry of a GeoJSON feature as rings. GeoJSON puts the longitude first, CAP the latitude.</summary>
internal static class AlertFeatureShape
{
    /// <summary>Outer rings only: holes are left closed. What cannot be read counts as undecidable, not as nothing.</summary>
    public static IReadOnlyList<AlertPolygon> Polygons(JsonElement geometry) => geometry.ValueKind == JsonValueKind.Null ? [] : geometry.Text("type") switch
    {
        "Polygon" => [Outer(geometry.Items("coordinates"))],
        "MultiPolygon" => [.. geometry.Items("coordinates").Select(polygon => Outer(Items(polygon)))],
        "GeometryCollection" => [.. geometry.Items("geometries").Where(one => one.Text("type") != "GeometryCollection").SelectMany(Polygons)],
        _ => [new AlertPolygon([])],
    };

    private static AlertPolygon Outer(IEnumerable<JsonElement> rings)
    {
        var ring = new List<GeoPoint>();
        foreach (var position in rings.Take(1).SelectMany(Items))
        {
            if (Point(position) is not { } point) return new AlertPolygon([]);
            ring.Add(point);
        }

        return CapShape.Closed(ring);
    }

    private static GeoPoint? Point(JsonElement position) =>
        position.ValueKind == JsonValueKind.Array && position.GetArrayLength() >= 2 && Number(position[0]) is { } lon && Number(position[1]) is { } lat
            ? CapShape.Point(lat, lon)
            : null;

    private static double? Number(JsonElement element) =>
        element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var value) && double.IsFinite(value) ? value : null;

    private static IEnumerable<JsonElement> Items(JsonElement array) =>
        array.ValueKind == JsonValueKind.Array ? array.EnumerateArray() : [];
}
