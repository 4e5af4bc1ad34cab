using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class WindChainTests
{
    [Fact]
    public void GustAt10M_GaleMarine_UsesThePlanningFactor()
    {
        // science.md 2.3: 1.30 for planning. W3 with the off-land factor 1.36 of WMO/TD-1555 checks the unit: 46.24 kt = 23.79 m/s.
        Assert.Equal(44.2, WindChain.GustAt10M(34), 1e-9);
        Assert.Equal(34, WindChain.MarineForGust(44.2), 1e-9);
        Assert.Equal(23.79, Wind.KtToMps(34 * 1.36), 0.02);
    }

    // science.md 2.3 (C).
    [Theory]
    [InlineData(Terrain.OpenCoast, 34.0)]
    [InlineData(Terrain.OpenFarmland, 28.9)]
    [InlineData(Terrain.Suburb, 23.8)]
    [InlineData(Terrain.WoodOrTown, 20.4)]
    public void SustainedAtGarden_GaleMarine_IsLessOnRougherGround(Terrain terrain, double expected)
    {
        Assert.Equal(expected, WindChain.SustainedAtGarden(34, terrain), 1e-9);
        Assert.Equal(34, WindChain.MarineForSustained(expected, terrain), 1e-9);
    }

    // science.md 2.4 (D) and 9, W4: ASCE 7-16 form (R2).
    [Theory]
    [InlineData(Terrain.OpenFarmland, 10, 1.001)]
    [InlineData(Terrain.Suburb, 9.144, 0.701)]
    [InlineData(Terrain.Suburb, 4.57, 0.575)]
    [InlineData(Terrain.WoodOrTown, 7.62, 0.665)]
    [InlineData(Terrain.OpenCoast, 6.10, 1.083)]
    public void VelocityPressureShare_KnownHeights_MatchTheTable(Terrain terrain, double height, double expected) =>
        Assert.Equal(expected, WindChain.VelocityPressureShare(height, terrain), 0.002);

    // science.md 2.4 (D): speed at 1 and 2 m over that at 10 m in the open; below 1 m it is held.
    [Theory]
    [InlineData(Terrain.Suburb, 1, 0.61)]
    [InlineData(Terrain.OpenFarmland, 1, 0.785)]
    [InlineData(Terrain.OpenCoast, 1, 0.889)]
    [InlineData(Terrain.Suburb, 2, 0.674)]
    [InlineData(Terrain.OpenFarmland, 2, 0.845)]
    [InlineData(Terrain.OpenCoast, 2, 0.945)]
    [InlineData(Terrain.Suburb, 0.2, 0.61)]
    public void GustAtHeight_LowThings_FeelLess(Terrain terrain, double height, double expected) =>
        Assert.Equal(expected, WindChain.GustAtHeight(1, height, terrain, Exposure.Open), 0.001);

    [Fact]
    public void GustAtHeight_W5_MultipliesHeightAndShelter() =>
        Assert.Equal(20.7, WindChain.GustAtHeight(40, 1, Terrain.Suburb, Exposure.PartlySheltered), 0.1);

    [Fact]
    public void GustAtHeight_BetweenBuildings_IsStronger()
    {
        var open = WindChain.GustAtHeight(40, 2, Terrain.Suburb, Exposure.Open);
        Assert.Equal(1.2 * open, WindChain.GustAtHeight(40, 2, Terrain.Suburb, Exposure.Funnel), 1e-9);
        Assert.Equal(0.7 * open, WindChain.GustAtHeight(40, 2, Terrain.Suburb, Exposure.Sheltered), 1e-9);
    }
}
