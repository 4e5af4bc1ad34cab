using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>Whether an alert is about a place, in rising order.</summary>
public enum AlertWhere
{
    /// <summary>It names where it holds, and the place is not there.</summary>
    Elsewhere,

    /// <summary>Where it holds cannot be decided for the place; shown as such, never left out.</summary>
    MayConcern,

    Concerns,
}

/// <summary>
/// Matches the areas of an alert with a site. One shape around the site or one code of the site is enough; where shapes
/// and codes differ, the one that says "here" counts.
/// </summary>
public static class AlertPlace
{
    private static readonly GeometryFactory Plane = new();

    /// <summary>A ring may lie a whole turn away from where its site is.</summary>
    private static readonly double[] Turns = [0, 360, -360];

    /// <summary>The nearest of all areas; an info without any area may concern everybody.</summary>
    public static AlertWhere Of(AlertInfo info, Site site) =>
        info.Areas.Count == 0 ? AlertWhere.MayConcern : info.Areas.Max(area => Of(area, site));

    public static AlertWhere Of(AlertArea area, Site site)
    {
        var shapes = area.Polygons.Select(polygon => Of(polygon, site.At)).Concat(area.Circles.Select(circle => Of(circle, site.At))).ToList();
        var codes = AlertCodes.Of(area.Codes, site.Codes);
        if (shapes.Contains(AlertWhere.Concerns) || codes == AlertWhere.Concerns) return AlertWhere.Concerns;
        if (shapes.Contains(AlertWhere.MayConcern)) return AlertWhere.MayConcern;
        return shapes.Count > 0 ? AlertWhere.Elsewhere : codes;
    }

    private static AlertWhere Of(AlertPolygon polygon, GeoPoint at)
    {
        if (polygon.Ring.Count < 4) return AlertWhere.MayConcern;

        var ring = Unrolled(polygon.Ring, at);
        if (!ring[0].Equals2D(ring[^1])) return AlertWhere.MayConcern;
        Geometry shape = Plane.CreatePolygon(ring);
        if (!shape.IsValid) shape = GeometryFixer.Fix(shape);
        if (shape.IsEmpty || shape.Area == 0) return AlertWhere.MayConcern;
        return Turns.Any(turn => shape.Covers(Plane.CreatePoint(new Coordinate(turn, at.LatDeg)))) ? AlertWhere.Concerns : AlertWhere.Elsewhere;
    }

    /// <summary>
    /// The ring on a plane whose longitudes count from the site and go on from point to point the short way, so that one
    /// across the date line stays in one piece.
    /// </summary>
    private static Coordinate[] Unrolled(IReadOnlyList<GeoPoint> ring, GeoPoint at)
    {
        var east = DegreesEast(at.LonDeg, ring[0].LonDeg);
        var plane = new Coordinate[ring.Count];
        for (var i = 0; i < ring.Count; i++)
        {
            if (i > 0) east += DegreesEast(ring[i - 1].LonDeg, ring[i].LonDeg);
            plane[i] = new Coordinate(Math.Round(east, 9), ring[i].LatDeg);
        }

        return plane;
    }

    /// <summary>A circle of no size marks a point without saying how far it reaches.</summary>
    private static AlertWhere Of(AlertCircle circle, GeoPoint at)
    {
        if (!(circle.RadiusKm > 0)) return AlertWhere.MayConcern;
        return DistanceKm(circle.Centre, at) <= circle.RadiusKm ? AlertWhere.Concerns : AlertWhere.Elsewhere;
    }

    private static double DegreesEast(double fromLonDeg, double toLonDeg)
    {
        var east = (toLonDeg - fromLonDeg) % 360;
        return east > 180 ? east - 360 : east <= -180 ? east + 360 : east;
    }

    /// <summary>Great circle by haversine on the mean sphere of science.md 1.3.</summary>
    private static double DistanceKm(GeoPoint one, GeoPoint other)
    {
        const double radiusKm = 6371.0088;
        var (lat1, lat2) = (double.DegreesToRadians(one.LatDeg), double.DegreesToRadians(other.LatDeg));
        var halfLat = Math.Sin((lat2 - lat1) / 2);
        var halfLon = Math.Sin(double.DegreesToRadians(other.LonDeg - one.LonDeg) / 2);
        var h = (halfLat * halfLat) + (Math.Cos(lat1) * Math.Cos(lat2) * halfLon * halfLon);
        return 2 * radiusKm * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }
}
