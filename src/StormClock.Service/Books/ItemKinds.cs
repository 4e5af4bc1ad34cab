namespace StormClock.Service.Books;

/// <summary>What about a kind of thing decides how it is worked on.</summary>
[Flags]
internal enum ItemTraits
{
    None = 0,

    /// <summary>Hangs or stands above reach: taken down from a ladder.</summary>
    Hung = 1,

    /// <summary>Catches wind as a sheet does: stops at the sheet limit (trade.md 1.1, C).</summary>
    Sheet = 2,

    /// <summary>Breaks, and is wanted in place until the last hours.</summary>
    Glass = 4,

    /// <summary>Alive; moved last.</summary>
    Animal = 8,

    /// <summary>Woody and high enough to be cut with a saw.</summary>
    Tree = 16,

    /// <summary>A weight to be handled, not a plant to be tied.</summary>
    Heavy = 32,
}

/// <summary>The kinds of things a garden book knows, in the trade's words (trade.md 9).</summary>
internal static class ItemKinds
{
    public static IReadOnlyDictionary<string, ItemTraits> All { get; } = new Dictionary<string, ItemTraits>
    {
        ["bed"] = ItemTraits.None,
        ["seedlings"] = ItemTraits.None,
        ["ground_crop"] = ItemTraits.None,
        ["low_crop"] = ItemTraits.None,
        ["tall_crop"] = ItemTraits.None,
        ["climber"] = ItemTraits.None,
        ["shrub"] = ItemTraits.None,
        ["hedge"] = ItemTraits.None,
        ["wigwam"] = ItemTraits.None,
        ["trellis"] = ItemTraits.None,
        ["lattice"] = ItemTraits.Sheet,
        ["mesh"] = ItemTraits.Sheet,
        ["espalier"] = ItemTraits.None,
        ["young_tree"] = ItemTraits.None,
        ["fruit_tree"] = ItemTraits.Tree,
        ["shade_tree"] = ItemTraits.Tree,
        ["banana"] = ItemTraits.None,
        ["palm"] = ItemTraits.Tree,
        ["potted_plant"] = ItemTraits.Heavy,
        ["potted_tree"] = ItemTraits.Heavy,
        ["trough"] = ItemTraits.Heavy,
        ["hanging"] = ItemTraits.Hung,
        ["sign"] = ItemTraits.Hung,
        ["vane"] = ItemTraits.Hung,
        ["lamp"] = ItemTraits.None,
        ["ornament"] = ItemTraits.Heavy,
        ["furniture"] = ItemTraits.Heavy,
        ["umbrella"] = ItemTraits.Heavy,
        ["swing"] = ItemTraits.Heavy,
        ["loose_gear"] = ItemTraits.None,
        ["timber"] = ItemTraits.Heavy,
        ["sheet"] = ItemTraits.Sheet,
        ["shade_sail"] = ItemTraits.Sheet,
        ["fruit_cage"] = ItemTraits.Sheet,
        ["hoop_house"] = ItemTraits.Sheet,
        ["cold_frame"] = ItemTraits.Glass | ItemTraits.Sheet,
        ["cloche"] = ItemTraits.Glass,
        ["pane"] = ItemTraits.Glass | ItemTraits.Sheet,
        ["greenhouse"] = ItemTraits.Glass,
        ["shed"] = ItemTraits.None,
        ["gate"] = ItemTraits.None,
        ["rain_tank"] = ItemTraits.Heavy,
        ["rain_barrel"] = ItemTraits.Heavy,
        ["drum"] = ItemTraits.Heavy,
        ["pond"] = ItemTraits.None,
        ["downpipe"] = ItemTraits.None,
        ["pump"] = ItemTraits.Heavy,
        ["gas_bottle"] = ItemTraits.Heavy,
        ["fuel"] = ItemTraits.Heavy,
        ["chemicals"] = ItemTraits.Heavy,
        ["compost"] = ItemTraits.None,
        ["bin"] = ItemTraits.None,
        ["boat"] = ItemTraits.Heavy,
        ["hive"] = ItemTraits.Animal | ItemTraits.Heavy,
        ["run"] = ItemTraits.Animal,
        ["animals"] = ItemTraits.Animal,
        ["other"] = ItemTraits.None,
    };
}
