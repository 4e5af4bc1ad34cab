using CsCheck;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class ClimatologyTests
{
    // science.md 3.4 (D), rows and the middle between two rows.
    [Theory]
    [InlineData(34, 25, 28)]
    [InlineData(65, 25, 101.5)]
    [InlineData(10, 25, 15)]
    [InlineData(200, 25, 140)]
    public void Radius34Nmi_ByStrength_IsPiecewiseLinear(double maxKt, double lat, double expected) =>
        Assert.Equal(expected, Climatology.Radius34Nmi(maxKt, lat), 1e-9);

    [Theory]
    [InlineData(35, 0.26)]
    [InlineData(-35, 0.26)]
    [InlineData(60, 0.52)]
    [InlineData(2, -0.39)]
    public void Radius34Nmi_ByLatitude_GrowsPoleward(double lat, double logFactor) =>
        Assert.Equal(90 * Math.Exp(logFactor), Climatology.Radius34Nmi(57, lat), 1e-9);

    [Theory]
    [InlineData(34, 100, 1)]
    [InlineData(50, 60, 0.34)]
    [InlineData(64, 105, 0.29)]
    [InlineData(17, 100, 3.354)] // outer profile: 2.5 · (34 · 2.5^−0.5 / 17)^(1/0.8)
    public void ShareOf34_KnownWinds_MatchTheTables(double wind, double maxKt, double expected) =>
        Assert.Equal(expected, Climatology.ShareOf34(wind, maxKt), 1e-3);

    [Fact]
    public void ShareOf34_StrongerWind_ReachesLess() =>
        Gen.Select(Gen.Double[10, 100], Gen.Double[10, 100], Gen.Double[20, 180]).Sample((a, b, maxKt) =>
            Assert.True(Climatology.ShareOf34(Math.Max(a, b), maxKt) <= Climatology.ShareOf34(Math.Min(a, b), maxKt) + 1e-12));
}
