using CsCheck;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class LocalPlaneTests
{
    [Fact]
    public void Place_AcrossAntimeridian_IsNear()
    {
        var (x, y) = new LocalPlane(new(-18, 179.5)).Place(new(-18, -179.5));
        Assert.Equal(57.06, x, 0.05);
        Assert.Equal(0, y, 1e-9);
    }

    [Fact]
    public void Place_NorthWest_HasSigns()
    {
        var (x, y) = new LocalPlane(new(25, -80)).Place(new(26, -81));
        Assert.Equal(-60 * Math.Cos(25.5 * Math.PI / 180), x, 1e-9);
        Assert.Equal(60, y, 1e-9);
    }

    // science.md 1.3 (D): within 600 n mi below 50° of latitude the plane is within 1 %.
    [Fact]
    public void Place_Within600Nmi_AgreesWithTheSphere() =>
        Gen.Select(Gen.Double[-45, 45], Gen.Double[-180, 180], Gen.Double[-7, 7], Gen.Double[-7, 7]).Sample((lat, lon, dLat, dLon) =>
        {
            var (here, there) = (new GeoPoint(lat, lon), new GeoPoint(lat + dLat, GreatCircle.WrapLonDeg(lon + dLon)));
            if (Math.Abs(there.LatDeg) > 50) return;
            var (x, y) = new LocalPlane(here).Place(there);
            var sphere = GreatCircle.DistanceNmi(here, there);
            Assert.InRange(Math.Sqrt(x * x + y * y), 0.99 * sphere - 0.01, 1.01 * sphere + 0.01);
        });
}
