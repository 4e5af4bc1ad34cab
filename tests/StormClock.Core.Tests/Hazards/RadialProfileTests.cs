using CsCheck;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class RadialProfileTests
{
    private static readonly RadialProfile W1 = RadialProfile.Through(160, 70, 35, 100, 25);

    private static readonly Gen<RadialProfile> AnyProfile =
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 300], Gen.Double[0, 300], Gen.Double[20, 160], Gen.Double[-45, 45])
            .Select((r34, r50, r64, maxKt, lat) => RadialProfile.Through(r34, r50, r64, maxKt, lat));

    // science.md 9, W1 (D).
    [Theory]
    [InlineData(50, 56.37)]
    [InlineData(100, 42.34)]
    [InlineData(240, 27.76)]
    public void WindKt_W1_FollowsLogLogLines(double distance, double expected) => Assert.Equal(expected, W1.WindKt(distance), 0.01);

    [Fact]
    public void RadiusNmi_W1_IsTheInverse() => Assert.Equal(112.93, W1.RadiusNmi(40), 0.01);

    [Theory]
    [InlineData(34, 160)]
    [InlineData(50, 70)]
    [InlineData(64, 35)]
    public void RadiusNmi_GivenWinds_AreExact(double wind, double radius) => Assert.Equal(radius, W1.RadiusNmi(wind), 1e-9);

    [Fact]
    public void WindKt_InsideTheEye_IsTheMaximum() => Assert.Equal(100, W1.WindKt(0));

    [Fact]
    public void RadiusNmi_StrongerThanTheStorm_IsZero() => Assert.Equal(0, W1.RadiusNmi(101));

    [Fact]
    public void WindKt_FarOutside_FallsFasterThanNear()
    {
        // Exponent 0.5 to 2.5 radii of 34 kt, then 0.8 (science.md 2.1, C): 34 · 2.5^−0.5 · 2^−0.8 at five radii.
        Assert.Equal(34 * Math.Pow(2.5, -0.5) * Math.Pow(2, -0.8), W1.WindKt(800), 1e-9);
    }

    [Fact]
    public void Through_CrossingRadii_AreSetApart()
    {
        var crossed = RadialProfile.Through(60, 60, 60, 90, 25);
        Assert.Equal(60, crossed.RadiusNmi(64), 1e-9);
        Assert.Equal(61, crossed.RadiusNmi(50), 1e-9);
        Assert.Equal(62, crossed.RadiusNmi(34), 1e-9);
    }

    [Fact]
    public void WindKt_AnyProfile_NeverRisesOutward() =>
        Gen.Select(AnyProfile, Gen.Double[0, 900], Gen.Double[0, 900]).Sample((profile, a, b) =>
            Assert.True(profile.WindKt(Math.Max(a, b)) <= profile.WindKt(Math.Min(a, b)) + 1e-9));

    [Fact]
    public void RadiusNmi_AnyProfile_BringsBackTheWind() =>
        Gen.Select(AnyProfile, Gen.Double[8, 160]).Sample((profile, wind) =>
        {
            var radius = profile.RadiusNmi(wind);
            if (radius == 0) Assert.True(profile.WindKt(0) < wind);
            else Assert.Equal(wind, profile.WindKt(radius), 0.01);
        });
}
