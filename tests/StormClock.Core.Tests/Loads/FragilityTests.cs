using CsCheck;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class FragilityTests
{
    // science.md 9, L8 (D).
    [Theory]
    [InlineData(20, 0.1860)]
    [InlineData(25, 0.5)]
    [InlineData(30, 0.7671)]
    [InlineData(35, 0.9108)]
    public void Chance_L8_FollowsTheLognormalCurve(double gust, double expected) => Assert.Equal(expected, Fragility.Chance(gust, 25, 0.25), 5e-4);

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void Chance_NoWind_IsNone(double gust) => Assert.Equal(0, Fragility.Chance(gust, 25, 0.25));

    [Fact]
    public void SafeGust_AnyThing_FailsOneInTen() =>
        Gen.Select(Gen.Double[2, 90], Gen.Double[0.1, 0.5]).Sample((median, beta) =>
            Assert.Equal(0.1, Fragility.Chance(Fragility.SafeGustMps(median, beta), median, beta), 1e-6));

    [Fact]
    public void Chance_RisingGust_NeverFalls() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[0, 20], Gen.Double[2, 90], Gen.Double[0.1, 0.5]).Sample((gust, more, median, beta) =>
        {
            var (low, high) = (Fragility.Chance(gust, median, beta), Fragility.Chance(gust + more, median, beta));
            Assert.InRange(low, 0, 1);
            Assert.True(high >= low - 1e-7);
        });
}
