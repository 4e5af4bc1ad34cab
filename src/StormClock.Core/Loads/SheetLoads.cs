using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Flat things that lie: lift from an edge. V² = m g / (0.613 Cl A), a form of wind-borne debris studies (M; trade.md 2.4).</summary>
internal static class SheetLoads
{
    /// <summary>Coefficient of lift of a loose sheet, an edge 5 cm up (science.md 5.2, M).</summary>
    public const double LooseLift = 1.0;

    /// <summary>Flush on the ground and weighted, gaps shut (science.md 5.2, M). A book or a job writes it as the sheet's drag.</summary>
    public const double FlushLift = 0.3;

    public static (List<Failure> Modes, double CentreM) Of(ItemBuild build, Soil soil)
    {
        if (AreaM2(build) is not { } area || ItemLoads.Known(build.MassKg) is not { } massKg) return ([], 0);
        var held = Holding.Of(build, soil);
        var lift = PanelLoads.Drag(build, ItemLoads.Known(build.Drag) ?? LooseLift);
        var gust = Footing.LiftsAtMps(massKg, lift * area, held);
        return ([new(FailureMode.Lifts, gust, held > 0 ? Fragility.BetaTied : Fragility.BetaRigid)], ItemLoads.Known(build.RaisedM) ?? 0);
    }

    /// <summary>The two longest sides: books write a sheet as it lies or as it stands.</summary>
    private static double? AreaM2(ItemBuild build)
    {
        var (height, width, depth) = (ItemLoads.Known(build.HeightM) ?? 0, ItemLoads.Known(build.WidthM) ?? 0, ItemLoads.Known(build.DepthM) ?? 0);
        return ItemLoads.Known(Math.Max(Math.Max(height * width, width * depth), height * depth));
    }
}
