using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>
/// A ring on a plane whose longitudes count from its first point and go on from point to point the short way, so that one
/// across the date line stays in one piece. Far sites are told by the box around it; its inside is worked out for the first
/// site in the box.
/// </summary>
internal sealed class AlertRing
{
    private static readonly GeometryFactory Plane = new();

    /// <summary>A ring may lie a whole turn away from where its site is.</summary>
    private static readonly double[] Turns = [0, 360, -360];

    private readonly double firstLonDeg;
    private readonly Envelope box = new();
    private readonly Lazy<IndexedPointInAreaLocator?> inside;

    public AlertRing(IReadOnlyList<GeoPoint> ring)
    {
        firstLonDeg = ring.Count > 0 ? ring[0].LonDeg : 0;
        var plane = Unrolled(ring);
        foreach (var corner in plane) box.ExpandToInclude(corner);
        inside = new Lazy<IndexedPointInAreaLocator?>(() => Inside(plane));

        // What has no inside may concern everybody, however far from it.
        if (MayHaveNoInside(plane) && inside.Value is null) box.ExpandToInclude(new Envelope(-720, 720, -90, 90));
    }

    public AlertWhere Where(GeoPoint at)
    {
        var east = Math.Round(DegreesEast(firstLonDeg, at.LonDeg), 9);
        var nearest = AlertWhere.Elsewhere;
        foreach (var turn in Turns)
        {
            if (!box.Covers(east + turn, at.LatDeg)) continue;
            if (inside.Value is not { } locator) return AlertWhere.MayConcern;
            if (locator.Locate(new Coordinate(east + turn, at.LatDeg)) != Location.Exterior) nearest = AlertWhere.Concerns;
        }

        return nearest;
    }

    /// <summary>By the sum of its triangles, which is zero for a line and also for some rings that cross themselves.</summary>
    private static bool MayHaveNoInside(Coordinate[] plane)
    {
        if (plane.Length < 4 || !plane[0].Equals2D(plane[^1])) return true;
        return Math.Abs(NetTopologySuite.Algorithm.Area.OfRingSigned(plane)) < 1e-9;
    }

    /// <summary>Null when the ring has no inside or is not closed, as one around a pole.</summary>
    private static IndexedPointInAreaLocator? Inside(Coordinate[] plane)
    {
        if (plane.Length < 4 || !plane[0].Equals2D(plane[^1])) return null;
        Geometry shape = Plane.CreatePolygon(plane);
        if (!shape.IsValid) shape = GeometryFixer.Fix(shape);
        if (shape.IsEmpty || shape.Area == 0) return null;

        // The first question builds its index; asked here, that happens once, whoever else is waiting.
        var locator = new IndexedPointInAreaLocator(shape);
        locator.Locate(plane[0]);
        return locator;
    }

    private static Coordinate[] Unrolled(IReadOnlyList<GeoPoint> ring)
    {
        var east = 0.0;
        var plane = new Coordinate[ring.Count];
        for (var i = 0; i < ring.Count; i++)
        {
            if (i > 0) east += DegreesEast(ring[i - 1].LonDeg, ring[i].LonDeg);
            plane[i] = new Coordinate(Math.Round(east, 9), ring[i].LatDeg);
        }

        return plane;
    }

    private static double DegreesEast(double fromLonDeg, double toLonDeg)
    {
        var east = (toLonDeg - fromLonDeg) % 360;
        return east > 180 ? east - 360 : east <= -180 ? east + 360 : east;
    }
}
