using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Plants that are thinned: a quarter of the crown, half of what climbs on a panel (C).</summary>
internal static class Pruned
{
    /// <summary>Share of the crown that stays.</summary>
    public const double CrownStays = 0.75;

    private const double ClimbersStay = 0.5;

    public static ItemBuild Of(ItemShape shape, ItemBuild build) => shape switch
    {
        ItemShape.Tree => build with { WidthM = build.WidthM * CrownStays },
        ItemShape.Body => build with { WidthM = build.WidthM * CrownStays, BaseM = BodyLoads.FootM(build) },
        ItemShape.Panel => build with { ClimberCover = build.ClimberCover * ClimbersStay },
        _ => build,
    };
}
