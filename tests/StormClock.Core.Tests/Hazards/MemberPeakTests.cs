using StormClock.Core.Advisories;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class MemberPeakTests
{
    private static readonly double[] Gale = [34];
    private static readonly QuadrantRadii Round30 = new(30, 30, 30, 30);
    private static readonly QuadrantRadii Round50 = new(50, 50, 50, 50);
    private static readonly QuadrantRadii Round90 = new(90, 90, 90, 90);

    [Fact]
    public void PeakKt_ClosestAtAPointOfTheTrack_LooksToBothSidesOfIt()
    {
        // The storm turns back just short of the place and is 60 kt stronger 3 h after, or 3 h before, the turn.
        var after = PeakOf(Point(3, -68, 70), Point(48, -60, 70), Point(51, -60.1, 130), Point(96, -68, 130));
        var before = PeakOf(Point(3, -68, 130), Point(45, -60.1, 130), Point(48, -60, 70), Point(96, -68, 70));

        // Two quarters of an hour on: 10 kt of the 60.
        Assert.Equal(80, after, 0.01);
        Assert.Equal(80, before, 0.01);
    }

    private static SampleStorms.PointAtLead Point(double lead, double lon, double maxKt) =>
        SampleStorms.Point(lead, 20, lon, maxKt, Round90, Round50, Round30);

    private static float PeakOf(params SampleStorms.PointAtLead[] points)
    {
        var storm = SampleStorms.Storm("AL992030", "TEST", "1", Instant.FromUtc(2030, 9, 1, 0, 0), points);
        return Ensemble.Deterministic(ForecastTrack.Of(storm), new(20, -59.9), Gale).PeakKt.Span[0];
    }
}
