namespace StormClock.Core.Units;

/// <summary>
/// A flat map around one place, nautical miles east and north of it. Wrong by less than 1 % within 600 n mi below 50° of
/// latitude (science.md 1.3, D); farther away only the sign of "far" matters.
/// </summary>
public readonly record struct LocalPlane(GeoPoint Origin)
{
    private const double NmiPerDegree = 60;

    /// <summary>East (x) and north (y) of the origin, nautical miles; takes the short way over the antimeridian.</summary>
    public (double XNmi, double YNmi) Place(GeoPoint point)
    {
        var middleLat = (point.LatDeg + Origin.LatDeg) / 2 * (Math.PI / 180);
        var lon = GreatCircle.WrapLonDeg(point.LonDeg - Origin.LonDeg);
        return (lon * NmiPerDegree * Math.Cos(middleLat), (point.LatDeg - Origin.LatDeg) * NmiPerDegree);
    }
}
