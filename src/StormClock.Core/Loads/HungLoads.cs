using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Things that hang: swing. What holds the hook is not known.</summary>
internal static class HungLoads
{
    // Between a smooth ball and a box (C).
    private const double UsualDrag = 0.8;

    public static (List<Failure> Modes, double CentreM) Of(ItemBuild build)
    {
        var outline = ItemLoads.Known(build.HeightM) * ItemLoads.Known(build.WidthM) * (ItemLoads.Share(build.Solidity) ?? 1);
        if (ItemLoads.Known(outline) is not { } area || ItemLoads.Known(build.MassKg) is not { } massKg) return ([], 0);
        var gust = Hanging.SwingsAtMps(massKg, area * (ItemLoads.Known(build.Drag) ?? UsualDrag), tiedN: ItemLoads.Known(build.TieN) ?? 0);
        return ([new(FailureMode.Swings, gust, Fragility.BetaTied)], ItemLoads.MiddleM(build));
    }
}
