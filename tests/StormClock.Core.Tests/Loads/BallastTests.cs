using CsCheck;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class BallastTests
{
    private const double PotDragArea = 0.8 * 0.144 + 0.5 * 0.48;
    private const double PotDragMoment = 0.8 * 0.144 * 0.2 + 0.5 * 0.48 * 0.8;

    // science.md 9, L3 (D): L2 for 30 m/s without a safety factor.
    [Fact]
    public void Ballast_L3_IsThatForTippingAndSliding()
    {
        Assert.Equal(45.65, Ballast.AgainstTippingKg(30, 35, 0.15, PotDragMoment, safety: 1), 0.05);
        Assert.Equal(4.97, Ballast.AgainstSlidingKg(30, 35, 0.5, PotDragArea, safety: 1), 0.05);
    }

    [Fact]
    public void Ballast_UsualFactor_IsHalfMoreOnTheAction() =>
        Assert.Equal(1.5 * (45.65 + 35) - 35, Ballast.AgainstTippingKg(30, 35, 0.15, PotDragMoment), 0.1);

    [Fact]
    public void Ballast_StandsAlready_IsNone() => Assert.Equal(0, Ballast.AgainstTippingKg(10, 35, 0.15, PotDragMoment));

    [Fact]
    public void BallastAndTies_AsMuchAsAsked_BringTheThresholdToTheTarget() =>
        Gen.Select(Gen.Double[20, 60], Gen.Double[1, 30], Gen.Double[0.1, 0.5], Gen.Double[0.2, 0.7], Gen.Double[15, 75]).Sample((target, mass, half, friction, angle) =>
        {
            const double area = 0.6, moment = 0.5;
            var tip = Ballast.AgainstTippingKg(target, mass, half, moment, safety: 1);
            var slide = Ballast.AgainstSlidingKg(target, mass, friction, area, safety: 1);
            var lever = 2 * half;
            var tipTie = new Tie(Ballast.TieAgainstTippingN(target, mass, half, moment, lever, angle, safety: 1), lever, angle);
            var slideTie = new Tie(Ballast.TieAgainstSlidingN(target, mass, friction, area, angle, safety: 1), lever, angle);
            Assert.Equal(tip > 0 ? target : Footing.TipsAtMps(mass, half, moment), Footing.TipsAtMps(mass + tip, half, moment), 1e-6);
            Assert.Equal(slide > 0 ? target : Footing.SlidesAtMps(mass, friction, area), Footing.SlidesAtMps(mass + slide, friction, area), 1e-6);
            Assert.True(Footing.TipsAtMps(mass, half, moment, tipTie) >= target - 1e-6);
            Assert.True(Footing.SlidesAtMps(mass, friction, area, slideTie) >= target - 1e-6);
        });
}
