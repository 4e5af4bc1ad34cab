using StormClock.Core.Garden;

namespace StormClock.Core.Water;

/// <summary>What a water level would do to one item.</summary>
/// <param name="FootM">Height of its foot above the datum.</param>
/// <param name="Chance">That water reaches it, 0 to 1.</param>
/// <param name="FloatsInM">Depth of water at its foot in which it floats; null when it does not, or when nothing is known.</param>
/// <param name="LiftM">How much it would have to be lifted to stand above the level with freeboard; 0 where it does.</param>
/// <param name="Harmful">It must not get into water.</param>
public sealed record WetItem(Item Item, Area Area, double FootM, double Chance, double? FloatsInM, double LiftM, bool Harmful);

/// <summary>Why nothing can be said about an item.</summary>
public sealed record NotCompared(Item Item, string Why);

/// <summary>Which things of a garden lie below a water level, what floats off, and what must not get into the water.</summary>
/// <param name="Items">Those that water may reach, harmful first, then the likeliest.</param>
public sealed record WaterAtItems(IReadOnlyList<WetItem> Items, IReadOnlyList<NotCompared> Unknown)
{
    /// <summary>Less likely than this is left out of the list (C).</summary>
    public const double LeastChance = 0.05;

    private const string Water = "water";

    public static WaterAtItems Of(GardenBook book, WaterLevel level)
    {
        var wet = new List<WetItem>();
        var unknown = new List<NotCompared>();
        foreach (var item in book.Items)
        {
            var area = book.AreaOf(item);
            var site = book.SiteOf(area);
            if (level.WhyNot(site.Datum) is { } why) unknown.Add(new(item, why));
            else if ((area.GroundM ?? site.GroundM) is not { } groundM) unknown.Add(new(item, "neither its area nor its site has a height of the ground"));
            else if (Wet(item, area, groundM, level) is { } found) wet.Add(found);
        }

        return new([.. wet.OrderByDescending(found => found.Harmful).ThenByDescending(found => found.Chance).ThenBy(found => found.Item.Id, StringComparer.Ordinal)], unknown);
    }

    private static WetItem? Wet(Item item, Area area, double groundM, WaterLevel level)
    {
        var footM = groundM + (item.Build.RaisedM ?? 0);
        var chance = level.ChanceOfWetting(footM);
        return chance < LeastChance
            ? null
            : new(item, area, footM, chance, FloatsIn(item.Build), Math.Max(0, level.LiftToM - footM), item.Endangers.Contains(Water));
    }

    /// <summary>Upright things with their water in them; the foot is taken as square.</summary>
    private static double? FloatsIn(ItemBuild build)
    {
        if (build is not { MassKg: { } massKg, BaseM: { } baseM, HeightM: { } heightM } || build.Standing is Standing.Rooted or Standing.RootedThrough or Standing.Fastened) return null;
        var waterKg = (build.HoldsL ?? 0) * (build.Filled ?? 0);
        return Floating.DepthM(massKg + waterKg, baseM * baseM, build.PotHeightM ?? heightM);
    }
}
