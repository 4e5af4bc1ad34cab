using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Units;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Tests.Messages;

public class AmountsTests
{
    [Theory]
    [InlineData(3.0, "m", UnitSystem.UsCustomary, "10 ft")]
    [InlineData(0.3048, "m", UnitSystem.UsCustomary, "1 ft")]
    [InlineData(0.31, "m", UnitSystem.UsCustomary, "2 ft")]
    [InlineData(10, "kg", UnitSystem.UsCustomary, "23 lb")]
    [InlineData(4.31, "m", UnitSystem.Metric, "4.4 m")]
    [InlineData(0.3, "m", UnitSystem.MetricKnots, "0.3 m")]
    [InlineData(3, "each", UnitSystem.UsCustomary, "3")]
    [InlineData(1.5, "hand_roll", UnitSystem.Metric, "1.5 hand roll")]
    public void Of_InTheGardensUnits_RoundsUp(double quantity, string unit, UnitSystem units, string expected) =>
        Assert.Equal(expected, Amounts.Of(quantity, unit, Speech.English(units)).Replace(Plain.Unbroken, ' '));

    /// <summary>1 m² is 10.764 sq ft, 1 m³ is 35.315 cu ft.</summary>
    [Theory]
    [InlineData(5.5, UnitSystem.UsCustomary, "59 sq ft", "194 cu ft")]
    [InlineData(5.5, UnitSystem.Metric, "5.5 m²", "5.5 m³")]
    [InlineData(0.04, UnitSystem.MetricKnots, "0 m²", "0 m³")]
    public void FloorAndRoom_InTheGardensUnits_AreRounded(double metric, UnitSystem units, string floor, string room)
    {
        Assert.Equal(floor, Amounts.Floor(metric, Speech.English(units)).Replace(Plain.Unbroken, ' '));
        Assert.Equal(room, Amounts.Room(metric, Speech.English(units)).Replace(Plain.Unbroken, ' '));
    }

    /// <summary>1 mph is 0.44704 m/s, 1 kt 1852 m/h, 1 ft 0.3048 m, 1 gal 3.785411784 l, 1 in 25.4 mm (NIST SP 811, appendix B).</summary>
    [Theory]
    [InlineData(UnitSystem.UsCustomary, "39 mph", "5.9 ft", "53 gal", "2.0 in")]
    [InlineData(UnitSystem.Metric, "63 km/h", "1.80 m", "200 l", "51 mm")]
    [InlineData(UnitSystem.MetricKnots, "34 kt", "1.80 m", "200 l", "51 mm")]
    public void SpeedHeightWaterRain_InTheGardensUnits_AreRounded(UnitSystem units, string speed, string height, string water, string rain) =>
        Assert.Equal(
            [speed, height, water, rain],
            new[] { Amounts.Speed(17.49, Speech.English(units)), Amounts.Height(1.8, Speech.English(units)), Amounts.Water(200, Speech.English(units)), Amounts.Rain(50.8, Speech.English(units)) }.Select(text => text.Replace(Plain.Unbroken, ' ')));

    /// <summary>The words hold whole numbers; they must be those of 34 kt.</summary>
    [Fact]
    public void GaleSustained_EachUnit_IsThirtyFourKnots()
    {
        var mps = Wind.KtToMps(Wind.GaleKt);
        Assert.Equal($"{mps / Wind.MpsPerMph:0} mph sustained wind", Amounts.GaleSustained(Speech.English(UnitSystem.UsCustomary)));
        Assert.Equal($"{mps * 3.6:0} km/h sustained wind", Amounts.GaleSustained(Speech.English(UnitSystem.Metric)));
        Assert.Equal($"{Wind.GaleKt:0} kt sustained wind", Amounts.GaleSustained(Speech.English(UnitSystem.MetricKnots)));
    }

    [Theory]
    [InlineData(0.004, "less than 1 in 100")]
    [InlineData(0.347, "35 in 100")]
    [InlineData(0.999, "more than 99 in 100")]
    public void Chance_NeverSaysNoneOrAll(double chance, string expected) => Assert.Equal(expected, Amounts.Chance(chance, Speeches.Us));

    [Theory]
    [InlineData(45, "45 min")]
    [InlineData(60, "1 h")]
    [InlineData(135, "2 h 15 min")]
    public void Minutes_Reads(int minutes, string expected) => Assert.Equal(expected, Amounts.Minutes(minutes).Replace(Plain.Unbroken, ' '));

    [Fact]
    public void Words_EveryToken_HasThem()
    {
        Assert.All(Enum.GetValues<JobKind>(), kind => Assert.Matches("^[a-z][a-z -]+$", Words.Of(kind, Speeches.Us)));
        Assert.All(Enum.GetValues<Caution>(), caution => Assert.Matches(@"^[A-Z].+\.$", CautionWords.Of(caution, Speeches.Us)));
        Assert.Equal("weigh down", Words.Of(JobKind.WeighDown, Speeches.Us));
    }
}
