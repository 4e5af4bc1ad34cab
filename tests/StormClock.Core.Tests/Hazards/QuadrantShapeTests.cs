using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class QuadrantShapeTests
{
    // science.md 9, W2 (D): radii 160/100/60/120 n mi (NE, SE, SW, NW), mean over largest reach 0.85.
    [Theory]
    [InlineData(0, 119.0)]
    [InlineData(20, 129.93)]
    [InlineData(45, 136.0)]
    [InlineData(90, 110.5)]
    [InlineData(135, 85.0)]
    [InlineData(180, 68.0)]
    [InlineData(270, 76.5)]
    [InlineData(300, 98.58)]
    public void Toward_W2_IsSmoothOverAzimuth(double azimuth, double expected) =>
        Assert.Equal(expected, 0.85 * Toward(new(160, 100, 60, 120), azimuth), 0.01);

    [Fact]
    public void Of_ZeroQuarter_KeepsASmallFill()
    {
        var shape = QuadrantShape.Of(new QuadrantRadii(30, 25, 0, 20));
        Assert.Equal(0.05 / 1.05, shape.Sw, 1e-12);
        Assert.Equal(4, shape.Ne + shape.Se + shape.Sw + shape.Nw, 1e-12);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(-20)]
    public void FromHeading_MovingNorth_IsLargerOnTheStrongSide(double lat)
    {
        var shape = QuadrantShape.FromHeading(0, lat);
        Assert.Equal(lat > 0, shape.Ne > shape.Nw);
        Assert.Equal(shape.Ne, shape.Se, 1e-12);
        Assert.Equal(4, shape.Ne + shape.Se + shape.Sw + shape.Nw, 1e-12);
    }

    [Fact]
    public void Toward_AnyDirection_LiesBetweenTheQuartersAndHasNoJump()
    {
        var radius = Gen.Double[1, 300];
        Gen.Select(radius, radius, radius, radius, Gen.Double[0, 360]).Sample((ne, se, sw, nw, azimuth) =>
        {
            var shape = new QuadrantShape(ne, se, sw, nw);
            var here = Toward(shape, azimuth);
            Assert.InRange(here, Math.Min(Math.Min(ne, se), Math.Min(sw, nw)) - 1e-9, shape.Largest + 1e-9);
            Assert.Equal(here, Toward(shape, azimuth + 1e-6), 1e-3);
        });
    }

    private static double Toward(QuadrantShape shape, double azimuth) =>
        shape.Toward(50 * Math.Sin(azimuth * Math.PI / 180), 50 * Math.Cos(azimuth * Math.PI / 180));
}
