using CsCheck;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class TreesTests
{
    private static readonly double L6DragArea = 0.5 * Trees.CrownAreaM2(4, 5);

    // science.md 9, L6 (D): H 8 m, stem 0.18 m, lever 5.5 m, no knots.
    [Fact]
    public void Tree_L6_BreaksAndUproots()
    {
        var wood = RoundBar.BendingStrengthNm(0.18, Trees.GreenWoodPa);
        var roots = Trees.RootHoldNm(0.18, 8);
        Assert.Equal(86.5, Trees.StemMassKg(0.18, 8), 0.2);
        Assert.Equal(22_900, wood, 20.0);
        Assert.Equal(10_380, roots, 20.0);
        Assert.Equal(51.8, Trees.GustOfMomentMps(wood, L6DragArea, 5.5, folds: true), 0.2);
        Assert.Equal(28.2, Trees.GustOfMomentMps(roots, L6DragArea, 5.5, folds: true), 0.2);
        Assert.Equal(21.4, Trees.GustOfMomentMps(roots * Trees.RootShare(Soil.Saturated, false, false), L6DragArea, 5.5, folds: true), 0.2);
    }

    [Fact]
    public void GustOfMoment_LeavesThatDoNotFold_IsTheCarefulEnd()
    {
        // By hand: √(10 380 / (0.613 · 8 · 5.5)) = 19.6 m/s.
        Assert.Equal(19.6, Trees.GustOfMomentMps(10_380, L6DragArea, 5.5, folds: false), 0.05);
    }

    // science.md 5.3 (C, M): at 20 m/s ψ Cd = 0.31.
    [Theory]
    [InlineData(8, 0.5)]
    [InlineData(20, 0.31)]
    [InlineData(150, 0.1)]
    public void Streamlining_OfABroadleaf_FallsWithTheGust(double gust, double dragLeft) => Assert.Equal(dragLeft, 0.5 * Trees.Streamlining(gust), 0.005);

    [Fact]
    public void GustOfMoment_AnyTree_IsTheInverseOfTheForce() =>
        Gen.Select(Gen.Double[1, 200], Gen.Double[0.1, 40], Gen.Double[0.5, 15]).Sample((gust, dragArea, lever) =>
        {
            var moment = VelocityPressure.AtPa(gust) * Trees.Streamlining(gust) * dragArea * lever;
            Assert.Equal(gust, Trees.GustOfMomentMps(moment, dragArea, lever, folds: true), 1e-6 * gust);
        });

    // science.md 5.3 (C, M).
    [Theory]
    [InlineData(Soil.Dry, false, false, 1)]
    [InlineData(Soil.Saturated, false, false, 0.7)]
    [InlineData(Soil.Dry, true, false, 0.4)]
    [InlineData(Soil.Saturated, true, true, 0.7 * 0.4 * 1.3)]
    public void RootShare_RainYouthAndStake_Multiply(Soil soil, bool young, bool staked, double expected) =>
        Assert.Equal(expected, Trees.RootShare(soil, young, staked), 1e-9);
}
