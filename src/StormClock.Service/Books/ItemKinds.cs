using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>The kinds of things a garden book knows, in the trade's words (trade.md 9).</summary>
internal static class ItemKinds
{
    private static readonly Dictionary<string, ItemTraits> Traits = new()
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

    public static IReadOnlyDictionary<string, ItemKind> All { get; } = Traits.ToDictionary(
        kind => kind.Key, kind => new ItemKind(kind.Key, kind.Key.Replace('_', ' '), kind.Value, ItemShape.Fixed, 50, ItemBuild.Unknown, []));
}
