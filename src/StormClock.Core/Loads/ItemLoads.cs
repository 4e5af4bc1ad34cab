using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>From what a book says of a thing to the gusts at which it fails.</summary>
public static class ItemLoads
{
    // Height of a thing of which nothing is known (C); low things feel the same gust up to 1 m anyway.
    private const double UnknownHeightM = 1;

    /// <summary>Every way in which one piece may fail; null when nothing can be said: size, mass or hold are missing. Never throws.</summary>
    public static ItemStrength? Of(ItemShape shape, ItemBuild build, Soil soil)
    {
        var computed = Computed(shape, build, soil);
        if (Known(build.HeldToMps) is not { } held) return computed;

        // The gardener's figure is of dry weather; formulas say how much rain takes from it.
        var dry = soil == Soil.Dry ? computed : Computed(shape, build, Soil.Dry);
        var share = computed is not null && dry is not null ? computed.First.GustMps / dry.First.GustMps : Observed.Share(shape, soil);
        var mode = computed?.First.Mode ?? Observed.Mode(shape);
        return new([new(mode, held * share, Observed.Beta(shape, build))], computed?.CentreHeightM ?? MiddleM(build));
    }

    private static ItemStrength? Computed(ItemShape shape, ItemBuild build, Soil soil)
    {
        var (modes, centreM) = shape switch
        {
            ItemShape.Body => BodyLoads.Of(build, soil),
            ItemShape.Panel => PanelLoads.Of(build, soil),
            ItemShape.Sheet => SheetLoads.Of(build, soil),
            ItemShape.Hung => HungLoads.Of(build),
            ItemShape.Tree => TreeLoads.Of(build, soil),
            _ => ([], 0),
        };
        modes.RemoveAll(mode => !double.IsFinite(mode.GustMps) || mode.GustMps <= 0);
        if (modes.Count == 0) return null;
        modes.Sort((a, b) => a.GustMps.CompareTo(b.GustMps));
        return new(modes, centreM);
    }

    /// <summary>A figure that can be worked with: above zero, and neither too small nor too large for anything in a garden.</summary>
    internal static double? Known(double? figure) => figure is > 1e-6 and < 1e9 ? figure : null;

    /// <summary>A share, brought between 0 and 1.</summary>
    internal static double? Share(double? figure) => figure is >= 0 and < 1e9 ? Math.Min(1, figure.Value) : null;

    /// <summary>Middle of the outline above the ground, m.</summary>
    internal static double MiddleM(ItemBuild build) => (Known(build.RaisedM) ?? 0) + (Known(build.HeightM) ?? UnknownHeightM) / 2;
}
