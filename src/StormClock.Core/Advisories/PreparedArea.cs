using System.Runtime.CompilerServices;
using StormClock.Core.Garden;

namespace StormClock.Core.Advisories;

/// <summary>An area made ready to be asked about many sites. Kept for as long as the area itself is.</summary>
internal sealed class PreparedArea
{
    private static readonly ConditionalWeakTable<AlertArea, PreparedArea> Known = [];

    private readonly AlertRing[] rings;
    private readonly AlertCircle[] circles;
    private readonly AlertCodes codes;

    private PreparedArea(AlertArea area)
    {
        rings = [.. area.Polygons.Select(polygon => new AlertRing(polygon.Ring))];
        circles = [.. area.Circles];
        codes = new AlertCodes(area.Codes);
    }

    public static PreparedArea Of(AlertArea area) => Known.GetValue(area, one => new PreparedArea(one));

    /// <summary>One shape around the site or one code of it is enough; codes rule a site out only where there is no shape.</summary>
    public AlertWhere Where(Site site)
    {
        var byCodes = codes.Where(site.Codes);
        if (byCodes == AlertWhere.Concerns || (rings.Length == 0 && circles.Length == 0)) return byCodes;

        var nearest = AlertWhere.Elsewhere;
        foreach (var ring in rings)
        {
            if (ring.Where(site.At) is var where && where > nearest) nearest = where;
        }

        foreach (var circle in circles)
        {
            if (AlertPlace.Of(circle, site.At) is var where && where > nearest) nearest = where;
        }

        return nearest;
    }
}
