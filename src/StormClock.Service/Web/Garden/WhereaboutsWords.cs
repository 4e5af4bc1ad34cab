using System.Globalization;
using StormClock.Core.Advisories;
using StormClock.Core.Units;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>The letters of <see cref="CompassPoint"/>, each with its word.</summary>
internal enum CompassWord { N, Nne, Ne, Ene, E, Ese, Se, Sse, S, Ssw, Sw, Wsw, W, Wnw, Nw, Nnw }

/// <summary>Where a storm is, as one line; a fact with its hour, and no promise.</summary>
internal static class WhereaboutsWords
{
    /// <summary>Seen from the nearest of the garden's sites.</summary>
    public static string Of(CentreFix fix, GardenVisit visit)
    {
        var (speech, site) = (visit.Speech, visit.Book.Sites.MinBy(site => GreatCircle.DistanceNmi(site.At, fix.Centre))!);
        return speech.Say(
            "after.whereabouts",
            ("storm", fix.StormName),
            ("position", Position(fix.Centre, speech)),
            ("distance", Amounts.Way(GreatCircle.DistanceNmi(site.At, fix.Centre), speech)),
            ("direction", speech.Word("compass", Enum.Parse<CompassWord>(CompassPoint.Of(GreatCircle.BearingDeg(site.At, fix.Centre)), ignoreCase: true))),
            ("site", site.Name),
            ("time", visit.Times.Exact(fix.At)));
    }

    /// <summary>To a tenth of a degree, as advisories give it.</summary>
    private static string Position(GeoPoint at, Speech speech) =>
        $"{speech.Say(at.LatDeg < 0 ? "latitude.south" : "latitude.north", ("degrees", Tenths(at.LatDeg)))}, {speech.Say(at.LonDeg < 0 ? "longitude.west" : "longitude.east", ("degrees", Tenths(at.LonDeg)))}";

    private static string Tenths(double deg) => Math.Abs(deg).ToString("0.0", CultureInfo.InvariantCulture);
}
