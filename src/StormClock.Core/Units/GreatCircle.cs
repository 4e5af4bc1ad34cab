namespace StormClock.Core.Units;

/// <summary>Distances, bearings and ways on a sphere of radius 3440.065 n mi (6371.0088 km).</summary>
public static class GreatCircle
{
    /// <summary>Mean radius of the Earth, nautical miles.</summary>
    public const double EarthRadiusNmi = 3440.065;

    /// <summary>Shortest distance by the haversine formula, nautical miles.</summary>
    public static double DistanceNmi(GeoPoint from, GeoPoint to) => EarthRadiusNmi * AngleRad(from, to);

    /// <summary>Direction in which the shortest way sets out, degrees from north, clockwise, in [0, 360).</summary>
    public static double BearingDeg(GeoPoint from, GeoPoint to)
    {
        var (lat1, lat2) = (Radians(from.LatDeg), Radians(to.LatDeg));
        var lon = Radians(WrapLonDeg(to.LonDeg - from.LonDeg));
        var east = Math.Sin(lon) * Math.Cos(lat2);
        var north = Math.Cos(lat1) * Math.Sin(lat2) - Math.Sin(lat1) * Math.Cos(lat2) * Math.Cos(lon);
        return (Degrees(Math.Atan2(east, north)) + 360) % 360;
    }

    /// <summary>The point at a share (0 to 1) of the shortest way; longitude in (−180, 180].</summary>
    public static GeoPoint Along(GeoPoint from, GeoPoint to, double share)
    {
        var angle = AngleRad(from, to);
        if (angle == 0) return from;
        var (a, b) = (Math.Sin((1 - share) * angle) / Math.Sin(angle), Math.Sin(share * angle) / Math.Sin(angle));
        var (x1, y1, z1) = OnUnitSphere(from);
        var (x2, y2, z2) = OnUnitSphere(to);
        var (x, y, z) = (a * x1 + b * x2, a * y1 + b * y2, a * z1 + b * z2);
        return new(Degrees(Math.Atan2(z, Math.Sqrt(x * x + y * y))), WrapLonDeg(Degrees(Math.Atan2(y, x))));
    }

    /// <summary>A longitude or a difference of longitudes brought into (−180, 180].</summary>
    public static double WrapLonDeg(double lonDeg) => lonDeg - 360 * Math.Ceiling((lonDeg - 180) / 360);

    private static double AngleRad(GeoPoint from, GeoPoint to)
    {
        var (lat1, lat2) = (Radians(from.LatDeg), Radians(to.LatDeg));
        var halfLat = Math.Sin((lat2 - lat1) / 2);
        var halfLon = Math.Sin(Radians(to.LonDeg - from.LonDeg) / 2);
        var h = halfLat * halfLat + Math.Cos(lat1) * Math.Cos(lat2) * halfLon * halfLon;
        return 2 * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }

    private static (double X, double Y, double Z) OnUnitSphere(GeoPoint p)
    {
        var (lat, lon) = (Radians(p.LatDeg), Radians(p.LonDeg));
        return (Math.Cos(lat) * Math.Cos(lon), Math.Cos(lat) * Math.Sin(lon), Math.Sin(lat));
    }

    private static double Radians(double deg) => deg * (Math.PI / 180);

    private static double Degrees(double rad) => rad * (180 / Math.PI);
}
