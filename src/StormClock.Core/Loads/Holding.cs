using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What holds a thing besides its weight, N.</summary>
internal static class Holding
{
    // Roots through the hole of a pot, or a stake beside it: a driven stake pulled aside at 0.3 m gives at 200 to 400 N, half of it counts
    // (trade.md 2.7, C).
    private const double ModestN = 150;

    /// <summary>Working load of ties and roots in this soil. Ties, straps and fastenings count by what is written of them alone.</summary>
    public static double Of(ItemBuild build, Soil soil)
    {
        var grown = build.Standing is Standing.RootedThrough or Standing.Rooted ? ModestN : 0;
        return (OfTies(build) + grown) * GroundAnchor.TieShare(build.Standing, soil);
    }

    /// <summary>In dry soil, without roots.</summary>
    public static double OfTies(ItemBuild build) =>
        ItemLoads.Known(build.TieN) ?? (build.TieN is null && build.Standing is Standing.Staked ? ModestN : 0);
}
