using StormClock.Core.Water;

namespace StormClock.Core.Tests.Water;

public class RunoffTests
{
    [Theory]
    // science.md R1: 260 mm on 45 m² at 0.85.
    [InlineData(260, 45, 0.85, 9945, 0.5)]
    // trade.md 11, 18: an inch on a thousand square feet, in US gallons.
    [InlineData(25.4, 92.90304, 1, 623.4 * 3.785411784, 2)]
    // trade.md 11, 19 [53]: 150 mm on 100 m² of metal.
    [InlineData(150, 100, 0.95, 14250, 1)]
    // Exact by the units: a millimetre on a square metre is a litre.
    [InlineData(1, 1, 1, 1, 1e-12)]
    public void Litres_OfRainOnAnArea_IsDepthTimesAreaTimesShare(double mm, double m2, double share, double litres, double tolerance) =>
        Assert.Equal(litres, Runoff.Litres(mm, m2, share), tolerance);

    /// <summary>trade.md 6, R2 [53].</summary>
    [Theory]
    [InlineData(Catchment.MetalRoof, 0.95)]
    [InlineData(Catchment.ShingleRoof, 0.90)]
    [InlineData(Catchment.TarAndGravelRoof, 0.80)]
    public void Share_OfARoof_IsTheTables(Catchment roof, double share) => Assert.Equal(share, Runoff.Share(roof));

    [Fact]
    public void Share_OfAnyCatchment_LiesBetweenNoneAndAll() =>
        Assert.All(Enum.GetValues<Catchment>(), catchment => Assert.InRange(Runoff.Share(catchment), 0.01, 1));

    [Theory]
    // R1: 1000 L half full, 45 m² at 0.85.
    [InlineData(500, 45, 0.85, 13.07, 0.01)]
    // trade.md 11, 20: 1000 L at 600 L, 50 m² at 0.9: 8.89 mm, at 20 mm/h 26.7 min.
    [InlineData(400, 50, 0.9, 8.889, 0.001)]
    public void MmToOverflow_OfATank_IsFreeVolumeOverTheRoof(double freeL, double m2, double share, double mm, double tolerance) =>
        Assert.Equal(mm, Runoff.MmToOverflow(freeL, m2, share), tolerance);

    [Fact]
    public void MmToOverflow_WithoutARoof_IsNever() => Assert.Equal(double.PositiveInfinity, Runoff.MmToOverflow(100, 0, 0.9));
}

public class OverflowTests
{
    private static readonly Instant Start = Instant.FromUtc(2027, 9, 22, 12, 0);

    /// <summary>R1: 39.2 min at 20 mm/h, and 1.5 min for the first flush of 0.5 mm.</summary>
    [Fact]
    public void At_SteadyRain_IsFirstFlushAndFreeVolume()
    {
        var at = Overflow.At([Spell(0, 6, 120)], 500, 45, 0.85);
        Assert.Equal(39.2 + 1.5, (at!.Value - Start).TotalMinutes, 0.1);
    }

    [Fact]
    public void At_RainInTwoSpells_CountsBoth()
    {
        // 0.5 + 10 mm are needed: 6 in the first hour, 4.5 of 9 in the third.
        var at = Overflow.At([Spell(0, 1, 6), Spell(2, 3, 9)], 450, 50, 0.9);
        Assert.Equal(150, (at!.Value - Start).TotalMinutes, 0.01);
    }

    [Fact]
    public void At_TooLittleRain_IsNever()
    {
        Assert.Null(Overflow.At([Spell(0, 6, 5)], 500, 45, 0.85));
        Assert.Null(Overflow.At([], 500, 45, 0.85));
        Assert.Null(Overflow.At([Spell(0, 6, 500)], 500, 0, 0.85));
    }

    private static RainSpell Spell(int from, int to, double mm) => new(Start + Duration.FromHours(from), Start + Duration.FromHours(to), mm);
}

public class SoakingAndFloatingTests
{
    /// <summary>science.md R2.</summary>
    [Fact]
    public void Soaking_OfAPot_IsItsAirFilledShare()
    {
        Assert.Equal(8, Soaking.FreeL(40, 0.2), 1e-9);
        Assert.Equal(63.7, Soaking.MmToFull(8, 0.4), 0.1);
    }

    /// <summary>An empty drum of 10 kg on a foot of 0.58 m across floats in 38 mm of water (by hand).</summary>
    [Theory]
    [InlineData(10, 0.2642, 0.89, 0.03785)]
    [InlineData(60, 1.0, 1.16, 0.06)]
    public void DepthM_OfALightThing_IsMassOverBase(double massKg, double baseM2, double heightM, double depthM) =>
        Assert.Equal(depthM, Floating.DepthM(massKg, baseM2, heightM)!.Value, 1e-4);

    [Fact]
    public void DepthM_OfAHeavyThing_IsNever() => Assert.Null(Floating.DepthM(300, 0.2, 0.9));
}

public class WaterLevelTests
{
    /// <summary>science.md R3.</summary>
    [Theory]
    [InlineData(3.2, 0, 0.0030)]
    [InlineData(1.4, 0, 0.9599)]
    [InlineData(1.4, 0.3, 0.9938)]
    public void ChanceOfWetting_OfAFoot_FollowsTheReference(double footM, double wavesM, double chance) =>
        Assert.Equal(chance, new WaterLevel(2.1, "NAVD88", 0, wavesM).ChanceOfWetting(footM, 0.4), 1e-3);

    /// <summary>√(0.2² + (0.25 · 1.6)²) by hand.</summary>
    [Fact]
    public void SigmaM_WithSurge_GrowsByAQuarterOfIt() => Assert.Equal(0.4472, new WaterLevel(1.8, "NAVD88", 1.6).SigmaM, 1e-4);

    /// <summary>trade.md 11, 30.</summary>
    [Fact]
    public void LiftToM_IsTheLevelAndTwoFeet() => Assert.Equal(2.4, new WaterLevel(1.8, "NAVD88").LiftToM, 1e-9);

    [Theory]
    [InlineData("NAVD88", "navd88 ", true)]
    [InlineData("NAVD88", "AHD", false)]
    [InlineData("NAVD88", null, false)]
    [InlineData("", "NAVD88", false)]
    [InlineData(" ", null, false)]
    public void WhyNot_OtherOrNoDatum_RefusesToCompare(string level, string? site, bool comparable) =>
        Assert.Equal(comparable, new WaterLevel(1.8, level).WhyNot(site) is null);
}

public class RainClassTests
{
    /// <summary>trade.md 6: light to 2.5, moderate to 7.6, heavy above (R); violent above 50 (M).</summary>
    [Theory]
    [InlineData(0, RainIntensity.None)]
    [InlineData(2.5, RainIntensity.Light)]
    [InlineData(2.6, RainIntensity.Moderate)]
    [InlineData(7.6, RainIntensity.Moderate)]
    [InlineData(7.7, RainIntensity.Heavy)]
    [InlineData(50, RainIntensity.Heavy)]
    [InlineData(51, RainIntensity.Violent)]
    public void Of_Rate_IsTheGlossarys(double mmPerHour, RainIntensity intensity) => Assert.Equal(intensity, RainClass.Of(mmPerHour));

    /// <summary>By hand from science.md 6.</summary>
    [Theory]
    [InlineData(10, 30, 60, 10)]
    [InlineData(5, 60, 60, 15)]
    [InlineData(5, 30, 200, 24)]
    public void PeakHourMm_IsTheLargestOfThree(double hour, double six, double day, double peak) => Assert.Equal(peak, RainClass.PeakHourMm(hour, six, day), 1e-9);
}
