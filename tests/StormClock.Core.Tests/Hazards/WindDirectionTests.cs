using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class WindDirectionTests
{
    /// <summary>By hand from science.md 2.5: bearing from the centre to the place, 90° on, less the inflow; mirrored south of the equator.</summary>
    [Theory]
    // A place east of the centre has wind from the south without inflow, from the south-south-east with 25°.
    [InlineData(0.001, 0, 2, 0, 180)]
    [InlineData(0.001, 0, 2, 25, 155)]
    // North of the centre: from the east.
    [InlineData(20, 2, 0, 0, 90)]
    [InlineData(20, 2, 0, 25, 65)]
    // West of the centre: from the north.
    [InlineData(0.001, 0, -2, 0, 0)]
    // South of the equator a place south of the centre has wind from the east.
    [InlineData(-20, -2, 0, 0, 90)]
    [InlineData(-20, -2, 0, 25, 115)]
    public void FromDeg_AroundTheCentre_FollowsTheCircleTurnedInwards(double latDeg, double northDeg, double eastDeg, double inflowDeg, double fromDeg)
    {
        var centre = new GeoPoint(latDeg, -70);
        var from = WindDirection.FromDeg(centre, new(latDeg + northDeg, -70 + eastDeg), inflowDeg);
        Assert.Equal(0, Math.Abs((from - fromDeg + 540) % 360 - 180), 0.1);
    }

    [Fact]
    public void FromDeg_InAGarden_IsTurnedInwardsBy45() =>
        Assert.Equal(45, WindDirection.FromDeg(new(20, -70), new(22, -70)), 0.1);

    [Theory]
    [InlineData(0, "N")]
    [InlineData(11, "N")]
    [InlineData(12, "NNE")]
    [InlineData(90, "E")]
    [InlineData(225, "SW")]
    [InlineData(349, "N")]
    [InlineData(-90, "W")]
    public void CompassPoint_OfDegrees_IsTheNearest(double deg, string name) => Assert.Equal(name, CompassPoint.Of(deg));

    [Fact]
    public void CentreAt_BetweenPoints_IsOnTheWay()
    {
        var track = ForecastTrack.Of(SampleStorms.Ian16);
        var (first, second) = (track.Points[0], track.Points[1]);
        var half = track.CentreAt((first.LeadHours + second.LeadHours) / 2);
        Assert.Equal(GreatCircle.DistanceNmi(first.Centre, half), GreatCircle.DistanceNmi(half, second.Centre), 0.01);
        Assert.Equal(first.Centre, track.CentreAt(-10));
        Assert.Equal(track.Points[^1].Centre, track.CentreAt(1000));
    }
}
