using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Where the wind of a cyclone comes from at a place: along the circle about the centre, turned inwards (science.md 2.5). By the forecast
/// track, so ±25° where the track holds, and more where it does not.
/// </summary>
public static class WindDirection
{
    // Beyond 1.2 radii of maximum wind over the sea (Phadke et al. 2003, M), and what land adds (R2). Gardens are on land.
    private const double InflowOverSeaDeg = 25;
    private const double InflowByLandDeg = 20;

    /// <summary>Direction the wind blows from, degrees from north, clockwise, in [0, 360).</summary>
    public static double FromDeg(GeoPoint centre, GeoPoint garden) => FromDeg(centre, garden, InflowOverSeaDeg + InflowByLandDeg);

    /// <summary>The same for a given inflow; on the southern half of the Earth the wind goes the other way round.</summary>
    /// <param name="inflowDeg">How far the wind is turned from the circle towards the centre.</param>
    public static double FromDeg(GeoPoint centre, GeoPoint place, double inflowDeg)
    {
        var turn = (90 - inflowDeg) * (centre.LatDeg < 0 ? -1 : 1);
        return (GreatCircle.BearingDeg(centre, place) + turn + 360) % 360;
    }
}
