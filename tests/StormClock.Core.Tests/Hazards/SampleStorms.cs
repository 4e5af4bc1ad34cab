using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

/// <summary>Advisories built by hand, so that tests run without any file.</summary>
internal static class SampleStorms
{
    /// <summary>Approximate centre of the town.</summary>
    public static readonly GeoPoint FortMyers = new(26.59, -81.86);

    /// <summary>Numbers of NHC forecast/advisory 16 on Ian, 0300 UTC 27 September 2022.</summary>
    public static readonly CycloneAdvisory Ian16 = Storm(
        "AL092022", "IAN", "16", Instant.FromUtc(2022, 9, 27, 0, 0),
        Point(3, 21.3, -83.4, 90, new(100, 90, 60, 90), new(50, 50, 20, 30), new(30, 25, 0, 20)),
        Point(12, 22.8, -83.7, 105, new(120, 110, 70, 100), new(60, 50, 40, 50), new(30, 25, 20, 20)),
        Point(24, 24.5, -83.7, 120, new(130, 120, 90, 120), new(60, 60, 50, 50), new(35, 30, 25, 30)),
        Point(36, 26.1, -83.5, 115, new(150, 130, 110, 140), new(70, 70, 60, 60), new(35, 35, 30, 30)),
        Point(48, 27.2, -83.1, 105, new(150, 140, 110, 150), new(80, 70, 60, 70), new(40, 40, 35, 35)),
        Point(60, 27.9, -82.7, 95, new(180, 130, 120, 150), new(80, 70, 60, 70)),
        Point(72, 28.6, -82.4, 65, new(180, 130, 120, 150), new(60, 50, 50, 60)),
        Point(96, 31.3, -82.2, 30),
        Point(120, 35.0, -81.5, 25));

    /// <summary>A storm that keeps its strength and its round field of 34 kt, from 3 to 120 h.</summary>
    public static CycloneAdvisory Straight(double maxKt, double radius34, Func<double, GeoPoint> centreAtLead) => Storm(
        "AL992030", "TEST", "1", Instant.FromUtc(2030, 9, 1, 0, 0),
        [.. new double[] { 3, 12, 24, 36, 48, 60, 72, 96, 120 }.Select(lead =>
        {
            var centre = centreAtLead(lead);
            return Point(lead, centre.LatDeg, centre.LonDeg, maxKt, new(radius34, radius34, radius34, radius34));
        })]);

    public static CycloneAdvisory Storm(string id, string name, string number, Instant synoptic, params PointAtLead[] points)
    {
        var dated = points.Select(point => point.Point with { Valid = synoptic + Duration.FromHours(point.LeadHours) }).ToArray();
        return new(id, name, number, dated[0].Valid, synoptic, dated[0], null, dated[1..]);
    }

    public static PointAtLead Point(
        double lead, double lat, double lon, double? maxKt, QuadrantRadii? r34 = null, QuadrantRadii? r50 = null, QuadrantRadii? r64 = null) =>
        new(lead, new(default, new(lat, lon), maxKt, null, r34, r50, r64));

    internal sealed record PointAtLead(double LeadHours, CyclonePoint Point);
}
