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
    /// <summary>The nearest of all areas; an info without any area may concern everybody.</summary>
    public static AlertWhere Of(AlertInfo info, Site site)
    {
        if (info.Areas.Count == 0) return AlertWhere.MayConcern;

        var nearest = AlertWhere.Elsewhere;
        for (var i = 0; i < info.Areas.Count && nearest != AlertWhere.Concerns; i++)
        {
            if (Of(info.Areas[i], site) is var where && where > nearest) nearest = where;
        }

        return nearest;
    }

    /// <summary>Those of many sites that an alert may concern; one without any account, or with an account without any area, may concern all.</summary>
    public static IEnumerable<Site> MayConcern(AlertMessage alert, IReadOnlyList<Site> sites)
    {
        if (alert.Infos.All(info => info.Areas.Count > 0) && alert.Infos.Count > 0)
        {
            var areas = alert.Infos.SelectMany(info => info.Areas).Select(PreparedArea.Of).ToArray();
            return sites.Where(site => Array.Exists(areas, area => area.Where(site) != AlertWhere.Elsewhere));
        }

        return sites;
    }

    public static AlertWhere Of(AlertArea area, Site site) => PreparedArea.Of(area).Where(site);

    /// <summary>A circle of no size marks a point without saying how far it reaches.</summary>
    internal static AlertWhere Of(AlertCircle circle, GeoPoint at)
    {
        if (!(circle.RadiusKm > 0)) return AlertWhere.MayConcern;
        return DistanceKm(circle.Centre, at) <= circle.RadiusKm ? AlertWhere.Concerns : AlertWhere.Elsewhere;
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
