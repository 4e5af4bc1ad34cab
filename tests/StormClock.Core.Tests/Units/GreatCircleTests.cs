using CsCheck;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class GreatCircleTests
{
    // science.md 9, G1 to G3: positions from Beryl 2024 no. 18 (R), numbers derived (D).
    private static readonly GeoPoint Now = new(16.2, -72.7);
    private static readonly GeoPoint Next = new(17.2, -75.4);
    private static readonly GeoPoint West = new(-18, 179.5);
    private static readonly GeoPoint East = new(-18, -179.5);

    private static readonly Gen<GeoPoint> AnyPoint = Gen.Select(Gen.Double[-89, 89], Gen.Double[-179.99, 180], (lat, lon) => new GeoPoint(lat, lon));

    [Fact]
    public void Distance_G1_IsHaversine() => Assert.Equal(166.47, GreatCircle.DistanceNmi(Now, Next), 0.05);

    [Fact]
    public void Bearing_G1_IsInitialCourse() => Assert.Equal(291.52, GreatCircle.BearingDeg(Now, Next), 0.05);

    [Fact]
    public void Along_G2_HalfWay()
    {
        var middle = GreatCircle.Along(Now, Next, 0.5);
        Assert.Equal(16.7044, middle.LatDeg, 1e-4);
        Assert.Equal(-74.0465, middle.LonDeg, 1e-4);
        Assert.Equal(18.50, GreatCircle.DistanceNmi(Now, Next) / 9, 0.01);
    }

    [Fact]
    public void Along_AcrossAntimeridian_TakesShortWay()
    {
        Assert.Equal(57.10, GreatCircle.DistanceNmi(West, East), 0.05);
        var middle = GreatCircle.Along(West, East, 0.5);
        Assert.Equal(-18.0006, middle.LatDeg, 1e-4);
        Assert.Equal(180, Math.Abs(middle.LonDeg), 1e-4);
        Assert.Equal(90, GreatCircle.BearingDeg(West, East), 0.2);
    }

    [Theory]
    [InlineData(180, 180)]
    [InlineData(-180, 180)]
    [InlineData(181, -179)]
    [InlineData(-359, 1)]
    [InlineData(720, 0)]
    public void WrapLon_AnyTurn_LiesInHalfOpenCircle(double lon, double expected) => Assert.Equal(expected, GreatCircle.WrapLonDeg(lon), 1e-9);

    [Fact]
    public void Along_AnyShare_SplitsTheDistance() =>
        Gen.Select(AnyPoint, AnyPoint, Gen.Double[0, 1]).Sample((a, b, share) =>
        {
            var whole = GreatCircle.DistanceNmi(a, b);
            if (whole > 10_000) return; // near the antipode the way is not unique
            var middle = GreatCircle.Along(a, b, share);
            Assert.Equal(share * whole, GreatCircle.DistanceNmi(a, middle), 1e-3);
            Assert.Equal((1 - share) * whole, GreatCircle.DistanceNmi(middle, b), 1e-3);
            Assert.InRange(middle.LonDeg, -180, 180);
        });

    [Fact]
    public void Along_SamePlace_StaysThere() => Assert.Equal(Now, GreatCircle.Along(Now, Now, 0.3));
}
