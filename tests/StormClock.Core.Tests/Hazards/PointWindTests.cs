using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class PointWindTests
{
    private static readonly Instant Issued = Instant.FromUtc(2027, 3, 1, 6, 0);

    /// <summary>Sustained wind by three hours from issue.</summary>
    private static PointForecast Forecast(params double[] windsKt) => new(
        "an office", new(30, -80), Issued,
        [.. windsKt.Select((kt, i) => new ForecastPeriod(Issued + Duration.FromHours(3 * i), Issued + Duration.FromHours(3 * i + 3), Wind.KtToMps(kt), null, null))]);

    private static WindSoon At(PointForecast forecast, double thresholdKt) => WindSoon.At(PointWind.Of(forecast, [thresholdKt], Draws.Default), thresholdKt, Issued);

    /// <summary>P = 1 − Φ(ln(T/V)/σ), σ 0.25 to 24 h and 0.35 beyond (science.md 4.1), by hand.</summary>
    [Theory]
    [InlineData(0, 30, 0.5)]
    [InlineData(0, 24, 0.1862)]
    [InlineData(10, 24, 0.2619)]
    public void Of_OneSpell_HasTheChanceOfItsSpread(int calmPeriodsBefore, double windKt, double chance) =>
        Assert.Equal(chance, At(Forecast([.. Enumerable.Repeat(1.0, calmPeriodsBefore), windKt]), 30).Chance, 0.012);

    [Fact]
    public void Of_GustWithoutWind_CountsByTheFactorOfPlans()
    {
        var forecast = Forecast(1) with { Periods = [new(Issued, Issued + Duration.FromHours(3), null, Wind.KtToMps(39), null)] };
        Assert.Equal(0.5, At(forecast, 30).Chance, 0.012);
    }

    /// <summary>The breeze at 6 h is no part of the gale at 30 h.</summary>
    [Fact]
    public void Of_BreezeDaysBefore_DoesNotBringTheGaleForward()
    {
        var gale = At(Forecast([5, 5, 28, 5, 5, 5, 5, 5, 5, 20, 40, 45, 40, 20, 5]), 25);
        Assert.True(gale.Chance > 0.9);
        Assert.True(gale.Earliest >= Issued + Duration.FromHours(22), $"{gale.Earliest}");
        Assert.True(gale.LastEnd <= Issued + Duration.FromHours(45));
    }

    [Fact]
    public void Of_WindBeyondThreeDays_SaysNothing() => Assert.Equal(0, At(Forecast([.. Enumerable.Repeat(3.0, 26), 60]), 30).Chance);

    [Fact]
    public void Of_NothingGiven_SaysNothing() =>
        Assert.Equal(0, At(Forecast(1) with { Periods = [new(Issued, Issued + Duration.FromHours(3), null, null, 4)] }, 30).Chance);

    [Fact]
    public void Of_StrongerThreshold_NeverComesSoonerNorLikelier()
    {
        var members = PointWind.Of(Forecast([10, 20, 30, 40, 30, 20]), [25, 34], Draws.Default);
        var (weak, strong) = (members.ArrivalHours(25).ToArray(), members.ArrivalHours(34).ToArray());
        Assert.All(Enumerable.Range(0, members.Count), m => Assert.True(float.IsNaN(strong[m]) || strong[m] >= weak[m]));
    }

    [Fact]
    public void SpellEnd_OfWindThatBlowsOrIsNear_BridgesShortLulls()
    {
        Assert.Equal(Issued + Duration.FromHours(12), PointWind.SpellEnd(Forecast([30, 30, 10, 30, 5, 5, 5, 30]), 25, Issued));
        Assert.Null(PointWind.SpellEnd(Forecast([5, 5, 5, 30]), 25, Issued));
        Assert.Equal(Issued + Duration.FromHours(6), PointWind.SpellEnd(Forecast([5, 30]), 25, Issued));
    }

    /// <summary>Twelve hours too old: σ of 6 h on arrivals (science.md 4.2), none on chance.</summary>
    [Fact]
    public void Widened_StaleSource_IsLessSureOfTheTime()
    {
        var members = PointWind.Of(Forecast([5, 5, 5, 5, 5, 5, 5, 60]), [30], Draws.Default);
        var wide = Stale.Widened(members, Duration.FromHours(12), Draws.Default);
        var (before, after) = (members.ArrivalHours(30).ToArray(), wide.ArrivalHours(30).ToArray());
        var shifts = before.Zip(after, (a, b) => (double)(b - a)).Where(double.IsFinite).ToList();
        Assert.Equal(before.Count(float.IsFinite), shifts.Count);
        Assert.Equal(0, shifts.Average(), 0.2);
        Assert.Equal(6, Math.Sqrt(shifts.Average(shift => shift * shift)), 0.15);
        Assert.Same(members, Stale.Widened(members, Duration.Zero, Draws.Default));
    }
}
