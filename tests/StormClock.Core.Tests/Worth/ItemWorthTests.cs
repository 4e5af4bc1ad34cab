using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Loads;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Worth;

/// <summary>Things of our own invention in an open garden on farmland.</summary>
public class ItemWorthTests
{
    private static readonly Area Bed = new("bed", "Bed", "home", Exposure.Open);
    private static readonly Site Home = Gardens.With([Gardens.Person("ada")]).Sites[0] with { Terrain = Terrain.OpenFarmland };
    private static readonly Crop Tomato = new("tomato", "tomato", RipensOff: true, 14, 16);
    private static readonly Crop Citrus = new("citrus", "citrus", RipensOff: false, 30, 20);

    /// <summary>A tub with a bush, 24 kg, that tips near 11 m/s (trade.md 2.4).</summary>
    private static readonly ItemBuild Bush = new()
    {
        HeightM = 1.8, WidthM = 0.6, BaseM = 0.36, MassKg = 24.1, PotHeightM = 0.38, Drag = 0.5, Surface = Surface.Paving, Standing = Standing.Free,
    };

    private static PeakGusts Gusts(params double[] gusts) => new(gusts);

    private static Item Line(ItemShape shape, ItemBuild build, double value, params Job[] jobs) =>
        new("item", "Item", "other", "bed", 1, value, [], jobs) { Shape = shape, Build = build, Written = build };

    private static Job Work(JobKind kind, params MaterialNeed[] materials) => Gardens.Job($"item/{kind}", 20) with { Kind = kind, Materials = materials };

    private static JobWorth Worth(Item item, PeakGusts peaks) => Assert.Single(ItemWorth.Of(item, Bed, Home, peaks));

    [Fact]
    public void Move_LightPotInAStorm_SavesNearlyItsWholeValue()
    {
        var worth = Worth(Line(ItemShape.Body, Bush, 100, Work(JobKind.Move)), Gusts(35, 40, 45));
        Assert.InRange(worth.LossAvoidedUsd, 95, 100);
        Assert.Null(worth.WhyLeave);
    }

    [Fact]
    public void Move_LightPotInABreeze_IsLeftWithTheReason()
    {
        var worth = Worth(Line(ItemShape.Body, Bush, 100, Work(JobKind.Move)), Gusts(3, 4, 5));
        Assert.InRange(worth.LossAvoidedUsd, 0, 2);
        Assert.Equal(LeftCause.StandsThisWind, worth.WhyLeave?.Cause);
    }

    /// <summary>By hand: a thing that fails at 20 m/s of its own, β 0.25, under gusts of 20 m/s at its height: one in two.</summary>
    [Fact]
    public void TakeDown_AtTheMedianGust_IsHalfOfTheValue()
    {
        var hung = new ItemBuild { HeldToMps = 20, HeightM = 0.4, WidthM = 0.3, MassKg = 2, RaisedM = 2 };
        var share = ItemChance.ShareOfGust(ItemChance.Weakest(ItemShape.Hung, hung)!, Home.Terrain, Bed.Exposure);
        var worth = Worth(Line(ItemShape.Hung, hung, 80, Work(JobKind.TakeDown)), Gusts(20 / share));
        Assert.Equal(40, worth.LossAvoidedUsd, 0.01);
    }

    [Fact]
    public void Hazard_ThingThatEndangersAWindow_WeighsThreeTimesAtLeastFifty()
    {
        var item = Line(ItemShape.Body, Bush, 10, Work(JobKind.Move)) with { Endangers = ["neighbour_window"] };
        var worth = Worth(item, Gusts(60));
        Assert.InRange(worth.LossAvoidedUsd, 9.5, 10);
        Assert.InRange(worth.HazardAvoidedUsd, 145, 150);
    }

    [Fact]
    public void Jobs_SecondOfTwo_CountsWhatTheFirstLeaves()
    {
        var worths = ItemWorth.Of(Line(ItemShape.Body, Bush, 100, Work(JobKind.Move), Work(JobKind.Tie)), Bed, Home, Gusts(40));
        Assert.True(worths[0].LossAvoidedUsd > 95);
        Assert.Equal(0, worths[1].LossAvoidedUsd);
        Assert.Equal(LeftCause.OutOfWind, worths[1].WhyLeave?.Cause);
    }

    [Fact]
    public void Jobs_FirstOfTwoStaysUndone_SecondCountsByItself()
    {
        var item = Line(ItemShape.Body, Bush, 100, Work(JobKind.Move), Work(JobKind.Tie));
        var alone = Worth(item with { Jobs = [Work(JobKind.Tie)] }, Gusts(12));
        var worths = ItemWorth.Of(item, Bed, Home, Gusts(12), undone: new HashSet<string> { "item/Move" });
        Assert.True(alone.LossAvoidedUsd > 0);
        Assert.Equal((alone.LossAvoidedUsd, alone.WhyLeave), (worths[1].LossAvoidedUsd, worths[1].WhyLeave));
    }

    [Theory]
    // Ripe and mature of a crop that ripens off the plant are saved; of one that does not, only the ripe (trade.md 3.1).
    [InlineData(true, 0.3, 0.5, 0.8)]
    [InlineData(false, 0.3, 0.5, 0.3)]
    [InlineData(false, 0, 0.9, 0)]
    public void Pick_InAStormThatTakesAll_SavesWhatIsWorthPicking(bool ripensOff, double ripe, double mature, double share)
    {
        var stems = new ItemBuild { HeldToMps = 12, HeightM = 1.5 };
        var item = Line(ItemShape.Stems, stems, 60, Work(JobKind.Pick)) with { Harvest = new(ripensOff ? Tomato : Citrus, 50, ripe, mature) };
        var worth = Worth(item, Gusts(90));
        Assert.Equal(50 * share, worth.LossAvoidedUsd, 0.1);
        Assert.Equal(share == 0, worth.WhyLeave is not null);
    }

    [Fact]
    public void Value_StatedByTheGardener_StandsAndIsNeverLeft()
    {
        var stated = Work(JobKind.Move) with { Value = 77, ValueStated = true };
        var worth = Worth(Line(ItemShape.Body, Bush, 100, stated), Gusts(1));
        Assert.Equal(77, worth.LossAvoidedUsd);
        Assert.Null(worth.WhyLeave);
    }

    [Fact]
    public void Item_OfWhichNothingIsKnown_IsAsLikelyLostAsNot() =>
        Assert.Equal(50, Worth(Line(ItemShape.Body, ItemBuild.Unknown, 100, Work(JobKind.Move)), Gusts(40)).LossAvoidedUsd, 1e-9);

    /// <summary>Whatever the thing, the job and the wind: no less than nothing, no more than is at stake, and more wind never makes moving away worth less.</summary>
    [Fact]
    public void Worth_AnyItemAndJob_StaysWithinWhatIsAtStake()
    {
        var gen = Gen.Select(Gen.Enum<ItemShape>(), Gen.Enum<JobKind>(), Gen.Double[0.2, 3], Gen.Double[0.1, 2], Gen.Double[0.5, 300], Gen.Double[1, 80]);
        gen.Sample((shape, kind, height, width, mass, gust) =>
        {
            var build = new ItemBuild { HeightM = height, WidthM = width, DepthM = width, BaseM = width / 2, MassKg = mass, Drag = 1, HoldsL = mass, StemM = 0.1, Solidity = 0.5 };
            var item = Line(shape, build, 100, Work(kind)) with { Endangers = ["street"] };
            var (calm, wild) = (Worth(item, Gusts(gust)), Worth(item, Gusts(gust * 1.5)));
            Assert.InRange(calm.LossAvoidedUsd, 0, 100);
            Assert.InRange(calm.HazardAvoidedUsd, 0, 300);
            if (kind is JobKind.Move) Assert.True(wild.LossAvoidedUsd >= calm.LossAvoidedUsd - 1e-9);
        });
    }
}
