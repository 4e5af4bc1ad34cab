using StormClock.Core.Garden;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class ClassStopsTests
{
    // Default limits of product.md 2 over science.md 2.3: gust ÷ 1.30, sustained ÷ terrain factor, at most 34 kt; knots.
    [Theory]
    [InlineData(WorkClass.Sheet, Terrain.OpenCoast, 14.77)] // 7.6 m/s = 14.77 kt sustained
    [InlineData(WorkClass.Sheet, Terrain.Suburb, 17.35)] // gust 11.6 m/s = 22.55 kt
    [InlineData(WorkClass.Ladder, Terrain.Suburb, 16.75)] // gust 11.2 m/s = 21.77 kt
    [InlineData(WorkClass.Carry, Terrain.OpenCoast, 26.05)] // 13.4 m/s sustained
    [InlineData(WorkClass.Carry, Terrain.WoodOrTown, 26.77)] // gust 17.9 m/s = 34.80 kt
    [InlineData(WorkClass.Ground, Terrain.OpenCoast, 29.16)] // 15.0 m/s sustained
    [InlineData(WorkClass.Ground, Terrain.Suburb, 30.05)] // gust 20.1 m/s = 39.07 kt
    public void MarineKt_DefaultLimits_IsTheLeastOfThree(WorkClass work, Terrain terrain, double expected) =>
        Assert.Equal(expected, ClassStops.MarineKt(WorkLimit.Defaults[work], terrain), 0.02);

    [Fact]
    public void MarineKt_HardyLimits_NeverAboveGaleForce() =>
        Assert.Equal(34, ClassStops.MarineKt(new(40, 60), Terrain.WoodOrTown));

    [Fact]
    public void ThresholdsKt_DefaultLimits_AscendAndHoldGaleForce()
    {
        var thresholds = ClassStops.ThresholdsKt(WorkLimit.Defaults, Terrain.Suburb);
        Assert.Equal(thresholds.Order(), thresholds);
        Assert.Equal(5, thresholds.Count); // sheet; ladder and saw alike; carry; ground; 34 kt
        Assert.Equal(34, thresholds[^1]);
    }

    [Fact]
    public void MarineKt_Ian16_StopsTenderWorkFirstInEveryMember()
    {
        var members = WindOutlook.At(
            SampleStorms.Ian16, SampleStorms.FortMyers, ClassStops.ThresholdsKt(WorkLimit.Defaults, Terrain.Suburb));
        WorkClass[] tenderFirst = [WorkClass.Ladder, WorkClass.Sheet, WorkClass.Carry, WorkClass.Ground];
        double[] windsKt = [.. tenderFirst.Select(work => ClassStops.MarineKt(WorkLimit.Defaults[work], Terrain.Suburb)), 34];
        for (var w = 1; w < windsKt.Length; w++) AssertNeverLater(members.ArrivalHours(windsKt[w - 1]), members.ArrivalHours(windsKt[w]));
    }

    private static void AssertNeverLater(ReadOnlySpan<float> tender, ReadOnlySpan<float> hardy)
    {
        for (var m = 0; m < tender.Length; m++)
        {
            if (!float.IsNaN(hardy[m])) Assert.True(tender[m] <= hardy[m], $"member {m}: {tender[m]} after {hardy[m]}");
        }
    }
}
