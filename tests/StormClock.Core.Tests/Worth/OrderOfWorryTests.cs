using StormClock.Core.Garden;
using StormClock.Core.Loads;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Worth;

public class OrderOfWorryTests
{
    private static readonly ItemBuild Tub = new() { HeightM = 0.6, WidthM = 0.6, BaseM = 0.6, MassKg = 8, Drag = 0.8, HoldsL = 120, Filled = 0, Surface = Surface.Paving };

    private static Item Thing(string id, ItemBuild build) => new(id, id, "other", "bed", 1, 50, [], []) { Shape = ItemShape.Body, Build = build };

    /// <summary>An empty tub goes long before a full one (common practice, no source); what is unknown comes last.</summary>
    [Fact]
    public void Of_Garden_HasTheFirstToGoFirstAndTheUnknownLast()
    {
        var book = Gardens.With([Gardens.Person("ada")]) with { Items = [Thing("full", Tub with { Filled = 1 }), Thing("unknown", ItemBuild.Unknown), Thing("empty", Tub)] };
        var order = OrderOfWorry.Of(book);
        Assert.Equal(["empty", "full", "unknown"], order.Select(worry => worry.Item.Id));
        Assert.True(order[1].Gust10MMps > 3 * order[0].Gust10MMps);
        Assert.Equal((null, null), (order[2].Gust10MMps, order[2].Mode));
        Assert.True(order[0].EarlyGust10MMps < order[0].Gust10MMps);
    }

    /// <summary>Behind a wall in a suburb the same thing goes at a higher gust of the forecast: by the share of science.md 2.4, by hand.</summary>
    [Fact]
    public void Of_ShelteredThing_TakesMoreOfTheForecastsGust()
    {
        var book = Gardens.With([Gardens.Person("ada")]) with { Items = [Thing("empty", Tub)] };
        var open = Assert.Single(OrderOfWorry.Of(book with { Sites = [book.Sites[0] with { Terrain = Terrain.OpenFarmland }, .. book.Sites.Skip(1)] }));
        var sheltered = Assert.Single(OrderOfWorry.Of(book with
        {
            Sites = [book.Sites[0] with { Terrain = Terrain.Suburb }, .. book.Sites.Skip(1)],
            Areas = [book.Areas[0] with { Exposure = Exposure.Sheltered }, .. book.Areas.Skip(1)],
        }));
        // √(Kz C / Kz B) at 1 m and 1/0.7: 0.785 / 0.61 / 0.7 = 1.84.
        Assert.Equal(1.84, sheltered.Gust10MMps!.Value / open.Gust10MMps!.Value, 0.02);
        Assert.Equal(FailureMode.Slides, open.Mode);
    }
}
