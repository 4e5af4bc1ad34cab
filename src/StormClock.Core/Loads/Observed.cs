using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Things for which there is a gust that somebody saw them fail at, and no formula (C).</summary>
internal static class Observed
{
    private const double StemsInSaturatedSoil = 0.85;

    /// <summary>Left of the gust in this soil.</summary>
    public static double Share(ItemShape shape, Soil soil) => shape == ItemShape.Stems && soil == Soil.Saturated ? StemsInSaturatedSoil : 1;

    public static FailureMode Mode(ItemShape shape) => shape switch
    {
        ItemShape.Body or ItemShape.Panel => FailureMode.Tips,
        ItemShape.Sheet => FailureMode.Lifts,
        ItemShape.Hung => FailureMode.Swings,
        ItemShape.Tree => FailureMode.Uproots,
        ItemShape.Stems => FailureMode.Lodges,
        ItemShape.Cover => FailureMode.Tears,
        _ => FailureMode.Breaks,
    };

    public static double Beta(ItemShape shape, ItemBuild build) => shape switch
    {
        ItemShape.Tree or ItemShape.Stems => Fragility.BetaGrown,
        ItemShape.Panel when build.Standing == Standing.OnPosts => Fragility.BetaGrown,
        ItemShape.Hung or ItemShape.Cover => Fragility.BetaTied,
        _ => Holding.Of(build, Soil.Dry) > 0 ? Fragility.BetaTied : Fragility.BetaRigid,
    };
}
