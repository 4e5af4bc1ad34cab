using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class OfficialBlendTests
{
    /// <summary>34 kt ours alone, 64 kt half and half (science.md 3.6); 50 kt 0.85 and 0.15 (docs/hazards.md 8, D).</summary>
    [Theory]
    [InlineData(34, 0.60, 0.20, 0.60)]
    [InlineData(50, 0.60, 0.20, 0.54)]
    [InlineData(64, 0.60, 0.20, 0.40)]
    [InlineData(64, 0.00, 0.10, 0.05)]
    public void Chance_WithOfficial_IsMixedByWind(double wind, double ours, double official, double expected) =>
        Assert.Equal(expected, OfficialBlend.Chance(wind, ours, official), 1e-12);

    [Theory]
    [InlineData(34)]
    [InlineData(50)]
    [InlineData(64)]
    public void Chance_WithoutOfficial_IsOurs(double wind) => Assert.Equal(0.37, OfficialBlend.Chance(wind, 0.37, null));

    [Theory]
    [InlineData(0.50, 0.71, true)]
    [InlineData(0.71, 0.50, true)]
    [InlineData(0.50, 0.70, false)]
    [InlineData(0.50, 0.31, false)]
    public void Differ_BeyondTwentyPoints_IsTrue(double ours, double official, bool differ) => Assert.Equal(differ, OfficialBlend.Differ(ours, official));
}
