using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Worth;

/// <summary>How much wind one thing of the garden stands where it is.</summary>
/// <param name="Gust10MMps">Gust at 10 m in the open, as forecasts tell it, at which one in two fails; null when nothing can be said.</param>
/// <param name="Mode">How it fails first.</param>
/// <param name="EarlyGust10MMps">The same at which one in ten fails.</param>
public sealed record Worry(Item Item, Area Area, double? Gust10MMps, FailureMode? Mode, double? EarlyGust10MMps);

/// <summary>The things of a garden by the wind at which they fail: what goes first comes first. An order, no promise.</summary>
public static class OrderOfWorry
{
    public static IReadOnlyList<Worry> Of(GardenBook book) =>
        [.. book.Items.Select(item => Of(book, item)).OrderBy(worry => worry.Gust10MMps ?? double.PositiveInfinity).ThenBy(worry => worry.Item.Id, StringComparer.Ordinal)];

    private static Worry Of(GardenBook book, Item item)
    {
        var area = book.AreaOf(item);
        if (ItemChance.Weakest(item.Shape, item.Build) is not { } strength) return new(item, area, null, null, null);
        var share = ItemChance.ShareOfGust(strength, book.SiteOf(area).Terrain, area.Exposure);
        var first = strength.First;
        return new(item, area, first.GustMps / share, first.Mode, Fragility.SafeGustMps(first.GustMps, first.Beta) / share);
    }
}
