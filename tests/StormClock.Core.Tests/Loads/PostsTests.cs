using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class PostsTests
{
    // L10: 1.8 × 2.4 m, φ 0.6, Cf 1.2 on the solid area.
    private const double TrellisDragArea = 1.2 * 0.6 * 1.8 * 2.4;

    [Fact]
    public void Force_L10At30Mps_IsHalfOnEachPost() => Assert.Equal(858.0, Posts.ForceN(30, TrellisDragArea, 2), 0.5);

    // science.md 9, L10 (D, Broms M).
    [Theory]
    [InlineData(Soil.Dry, 367.2, 19.63)]
    [InlineData(Soil.Saturated, 172.8, 13.46)]
    public void Posts_L10_LeanSoonerInSoakedSoil(Soil soil, double holdsN, double leansAt)
    {
        var weight = Posts.SoilWeightNm3(soil);
        Assert.Equal(holdsN, Posts.HoldsN(0.1, 0.6, 0.9, weight), 0.5);
        Assert.Equal(leansAt, Posts.LeansAtMps(TrellisDragArea, 0.9, 2, 0.1, 0.6, weight), 0.02);
    }

    [Fact]
    public void Breaks_TwoTimberPosts_AtTheirSectionModulus()
    {
        // By hand: π·0.1³/32 = 9.817e-5 m³, 30 MPa → 2945 N·m; 2 · 2945 / 0.9 = 6545 N over 3.110 m² → 2104 Pa → 58.6 m/s.
        Assert.Equal(58.6, Posts.BreaksAtMps(TrellisDragArea, 0.9, 2, 0.1, Posts.WoodStrengthPa), 0.05);
    }

    [Fact]
    public void Guys_OnPosts_JoinTheirHold()
    {
        // L10 with 734.4 N of guys: twice the hold, √2 of the gust.
        Assert.Equal(19.63 * Math.Sqrt(2), Posts.LeansAtMps(TrellisDragArea, 0.9, 2, 0.1, 0.6, 17_000, guysN: 734.4), 0.02);
    }
}
