using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class HoldsTests
{
    // trade.md 11, 21 and 2.7 (D): plate 75 mm, 30° cone, kgf.
    [Theory]
    [InlineData(0.6, 1700, 174)]
    [InlineData(0.6, 900, 92)]
    [InlineData(0.35, 1700, 42)]
    [InlineData(0.75, 1700, 321)]
    public void ConeUplift_GardenAuger_IsTheWeightOfItsSoil(double deep, double soilKgM3, double expectedKgf) =>
        Assert.Equal(expectedKgf, GroundAnchor.ConeUpliftN(0.075, deep, soilKgM3) / Footing.Gravity, 0.02 * expectedKgf);

    // science.md 5.4 (C): 20 % of break, knots half, buckles 0.6.
    [Fact]
    public void WorkingLoad_RopesAndWebbing_AreWellBelowBreak()
    {
        Assert.Equal(1000, WorkingLoad.RopeN(5000, knotted: false), 1e-9);
        Assert.Equal(500, WorkingLoad.RopeN(5000, knotted: true), 1e-9);
        Assert.Equal(1200, WorkingLoad.WebbingN(2000), 1e-9);
    }

    // science.md 5.2, trade.md 2.3 (M), default 0.35.
    [Theory]
    [InlineData(null, Surface.Paving, Soil.Dry, 0.5)]
    [InlineData(null, Surface.Paving, Soil.Saturated, 0.4)]
    [InlineData(null, Surface.Tiles, Soil.Saturated, 0.3)]
    [InlineData(null, Surface.Gravel, Soil.Dry, 0.55)]
    [InlineData(null, Surface.Grass, Soil.Saturated, 0.35)]
    [InlineData(null, Surface.Decking, Soil.Saturated, 0.25)]
    [InlineData(null, null, Soil.Dry, 0.35)]
    [InlineData(0.6, Surface.Paving, Soil.Dry, 0.6)]
    [InlineData(0.6, Surface.Paving, Soil.Saturated, 0.48)]
    public void Friction_BySurfaceAndRain_IsTheWrittenOneOrTheUsual(double? written, Surface? surface, Soil soil, double expected) =>
        Assert.Equal(expected, Friction.Of(written, surface, soil), 1e-9);
}
