using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class ErrorStatisticsTests
{
    private static readonly ErrorStatistics Grown =
        ReferenceStatistics.Atlantic2014To2018 with { EvenSpeedKt = 15, UsualSpeedKt = 10, SizeCalm = 1, WindGrowth = 0.5, UsualWindKt = 60 };

    [Theory]
    [InlineData(10, 1)]
    // √((15² + 20²) / (15² + 10²)) and √(15² / (15² + 10²)), by hand.
    [InlineData(20, 1.386750)]
    [InlineData(0, 0.832050)]
    // Beyond 30 kt the last value holds: √((15² + 30²) / (15² + 10²)).
    [InlineData(50, 1.860521)]
    public void AlongFactor_BySpeed_IsTheRootOfPlaceAndTimeSquared(double speedKt, double factor) =>
        Assert.Equal(factor, Grown.AlongFactor(speedKt), 1e-5);

    [Fact]
    public void AlongBiasFactor_TwiceTheUsualSpeed_IsTwice()
    {
        Assert.Equal(2, Grown.AlongBiasFactor(20), 1e-12);
        Assert.Equal(0, Grown.AlongBiasFactor(0), 1e-12);
    }

    [Fact]
    public void WindAndSizeFactor_StrongerStorm_IsLessSureInStrengthAndSurerInSize()
    {
        // 0.5 + 0.5 · 120/60, and 60/120.
        Assert.Equal(1.5, Grown.WindFactor(120), 1e-12);
        Assert.Equal(0.5, Grown.SizeFactor(120), 1e-12);
        Assert.Equal(1, Grown.WindFactor(60), 1e-12);
        Assert.Equal(1, Grown.SizeFactor(60), 1e-12);
    }

    [Fact]
    public void Factors_WithoutGrowth_AreOne()
    {
        var flat = ReferenceStatistics.Atlantic2014To2018;
        foreach (var value in new double[] { 0, 12, 60, 150 })
        {
            Assert.Equal(1, flat.AlongFactor(value));
            Assert.Equal(1, flat.AlongBiasFactor(value));
            Assert.Equal(1, flat.WindFactor(value));
            Assert.Equal(1, flat.SizeFactor(value));
        }
    }

    [Fact]
    public void Atlantic_FromItsFile_IsPlausible()
    {
        var errors = ErrorStatistics.Atlantic;
        // Official mean track errors of 2017 to 2022 lie between 42 and 61 n mi at 48 h (science.md 3.2, R2); a spread of one
        // component is about 0.8 of the mean.
        Assert.InRange(errors.CrossSigmaNmi[4], 30, 60);
        Assert.InRange(errors.AlongSigmaNmi[4], 35, 70);
        for (var k = 1; k < ErrorStatistics.LeadHours.Count; k++)
        {
            Assert.True(errors.AlongSigmaNmi[k] > errors.AlongSigmaNmi[k - 1]);
            Assert.True(errors.CrossSigmaNmi[k] > errors.CrossSigmaNmi[k - 1]);
            Assert.InRange(errors.AlongRho[k - 1], 0.3, 0.99);
        }
    }

    [Fact]
    public void Read_WhatWriteWrote_IsTheSame()
    {
        var again = ErrorStatisticsText.Read(ErrorStatisticsText.Write(Grown, ["where from", "and when"]));
        Assert.Equal(Grown.AlongSigmaNmi, again.AlongSigmaNmi);
        Assert.Equal(Grown.SizeRho, again.SizeRho);
        Assert.Equal(Grown.EvenSpeedKt, again.EvenSpeedKt);
        Assert.Equal(Grown.SizeBias, again.SizeBias);
    }

    [Fact]
    public void Read_LineMissing_NamesIt()
    {
        var text = ErrorStatisticsText.Write(Grown, []).Replace("wind-rho", "wind-row", StringComparison.Ordinal);
        Assert.Contains("wind-rho", Assert.Throws<FormatException>(() => ErrorStatisticsText.Read(text)).Message, StringComparison.Ordinal);
    }
}
