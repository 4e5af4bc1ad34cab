using StormClock.Core.Garden;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Water;

namespace StormClock.Core.Tests.Water;

public class WaterAtItemsTests
{
    private static readonly WaterLevel Level = new(1.8, "NAVD88");

    /// <summary>Foot 1.6 m: 1 − Φ(−0.2 / 0.2) = 0.841; lifted by 1.8 + 0.6 − 1.6.</summary>
    [Fact]
    public void Of_ThingBelowTheLevel_IsNamedWithItsChanceAndLift()
    {
        var found = Assert.Single(Of(new() { RaisedM = 0.4 }, groundM: 1.2).Items);
        Assert.Equal((1.6, 0.8), (found.FootM, Math.Round(found.LiftM, 9)));
        Assert.Equal(0.8413, found.Chance, 1e-4);
    }

    [Fact]
    public void Of_ThingFarAbove_IsNotNamed() => Assert.Empty(Of(ItemBuild.Unknown, groundM: 3.2).Items);

    [Fact]
    public void Of_EmptyTub_FloatsBeforeAFullOne()
    {
        var tub = new ItemBuild { MassKg = 6, BaseM = 0.6, HeightM = 0.5, HoldsL = 150, Filled = 0 };
        // 6 kg on 0.36 m²: 17 mm, by hand.
        Assert.Equal(0.0167, Of(tub, 1).Items[0].FloatsInM!.Value, 1e-4);
        Assert.Equal(0.4333, Of(tub with { Filled = 1 }, 1).Items[0].FloatsInM!.Value, 1e-4);
        Assert.Null(Of(tub with { Filled = 1, HoldsL = 200 }, 1).Items[0].FloatsInM);
        Assert.Null(Of(tub with { Standing = Standing.Fastened }, 1).Items[0].FloatsInM);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("AHD")]
    public void Of_OtherOrNoDatum_ComparesNothingAndSaysWhy(string? datum)
    {
        var water = WaterAtItems.Of(Book(ItemBuild.Unknown, 1, datum), Level);
        Assert.Empty(water.Items);
        Assert.Contains("NAVD88", Assert.Single(water.Unknown).Why);
    }

    [Fact]
    public void Of_NoHeight_SaysSo() =>
        Assert.Contains("height of the ground", Assert.Single(WaterAtItems.Of(Book(ItemBuild.Unknown, null, "NAVD88"), Level).Unknown).Why);

    private static WaterAtItems Of(ItemBuild build, double groundM) => WaterAtItems.Of(Book(build, groundM, "NAVD88"), Level);

    private static GardenBook Book(ItemBuild build, double? groundM, string? datum)
    {
        var book = Gardens.With([Gardens.Person("ada")]);
        return book with
        {
            Sites = [book.Sites[0] with { Datum = datum }],
            Areas = [book.Areas[0] with { GroundM = groundM }],
            Items = [book.Items[0] with { Build = build }],
        };
    }
}
