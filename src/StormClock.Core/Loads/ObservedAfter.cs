using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What a gust that was seen becomes when a job is done (C): it moves as the formulas move, or by a modest share where there are none.</summary>
internal static class ObservedAfter
{
    private const double Bundled = 1.4;
    private const double Steadied = 1.2;

    /// <summary>The gust to write of the thing after the job; null where none was written, or where it speaks of another shape.</summary>
    public static double? Mps(ItemShape shape, ItemBuild before, ItemShape newShape, ItemBuild after, JobKind job)
    {
        if (ItemLoads.Known(before.HeldToMps) is not { } held) return null;
        var was = ItemLoads.Of(shape, before with { HeldToMps = null }, Soil.Dry);
        var now = ItemLoads.Of(newShape, after with { HeldToMps = null }, Soil.Dry);
        if (now is not null && shape != newShape) return null;
        if (was is not null && now is not null) return held * now.First.GustMps / was.First.GustMps;
        var steadied = shape is ItemShape.Tree || (shape is ItemShape.Panel && before.Standing is Standing.OnPosts && before.TieN == after.TieN) ? 1 : Steadied;
        return held * Share(shape, job, steadied);
    }

    /// <param name="steadied">What ties, straps and weights give; a trunk or posts gain nothing by ties that do not reach the ground.</param>
    private static double Share(ItemShape shape, JobKind job, double steadied) => job switch
    {
        JobKind.Bundle when shape is ItemShape.Stems => Bundled,
        JobKind.LayFlat when shape is not ItemShape.Body => 1,
        JobKind.Tie or JobKind.Strap or JobKind.Bundle or JobKind.WeighDown or JobKind.LayFlat => steadied,
        JobKind.Prune when shape is ItemShape.Tree or ItemShape.Stems or ItemShape.Body => 1 / Math.Sqrt(Pruned.CrownStays),
        _ => 1,
    };
}
