using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Trees: stem breaks or root plate turns. Stem, height and crown width must be known.</summary>
internal static class TreeLoads
{
    // From the top, where a book says nothing (C).
    private const double CrownShareOfHeight = 0.6;

    private const double YoungBelowYears = 3;

    // Trunks of every size and kind were seen to snap near this gust (Physical Review E 93, 023001, as reported, R2; foresters dispute it): no
    // formula is trusted to hold a tree beyond it.
    private const double MostMps = 42;

    public static (List<Failure> Modes, double CentreM) Of(ItemBuild build, Soil soil)
    {
        if (ItemLoads.Known(build.HeightM) is not { } height || ItemLoads.Known(build.WidthM) is not { } width
            || ItemLoads.Known(build.StemM) is not { } stem) return ([], 0);

        var crownDepth = Math.Min(ItemLoads.Known(build.CrownDepthM) ?? CrownShareOfHeight * height, height);
        var centre = height - crownDepth / 2;
        var drag = ItemLoads.Known(build.Drag) ?? Trees.LeafyDrag;
        var dragArea = drag * Trees.CrownAreaM2(width, crownDepth);
        var folds = drag >= Trees.LeaflessBelowDrag;
        var young = build.YearsInGround is < YoungBelowYears;
        var roots = Trees.RootHoldNm(stem, height) * Trees.RootShare(soil, young, build.Standing == Standing.Staked);
        var wood = RoundBar.BendingStrengthNm(stem, Trees.GreenWoodPa) * Trees.Knots;
        var lever = centre * Trees.BentCrown;
        return (
            [
                new(FailureMode.Uproots, Trees.GustOfMomentMps(roots, dragArea, lever, folds), Fragility.BetaGrown),
                new(FailureMode.Breaks, Math.Min(MostMps, Trees.GustOfMomentMps(wood, dragArea, lever, folds)), Fragility.BetaGrown),
            ],
            centre);
    }
}
