using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Work stops at the earliest of its sustained limit at the garden, its gust limit, and 34 kt marine without any reduction
/// (product.md 2). All three rise and fall with the marine wind, so that each class and terrain has one marine wind to watch: the
/// least of three.
/// </summary>
/// <remarks>
/// Most of these winds lie under 34 kt, for which advisories give no radii: they are read off the outer profile beyond the radius of
/// 34 kt (science.md 2.1), and for depressions without radii off climatology with the same profile. That part is not scored.
/// </remarks>
public static class ClassStops
{
    /// <summary>Marine 1-min wind, knots, at which work with this limit stops on this terrain.</summary>
    public static double MarineKt(WorkLimit limit, Terrain terrain)
    {
        var sustained = WindChain.MarineForSustained(Wind.MpsToKt(limit.SustainedMps), terrain);
        var gust = WindChain.MarineForGust(Wind.MpsToKt(limit.GustMps));
        return Math.Min(Wind.GaleKt, Math.Min(sustained, gust));
    }

    /// <summary>Thresholds that a garden's decisions need from the members: its class limits and 34 kt, ascending.</summary>
    public static IReadOnlyList<double> ThresholdsKt(IReadOnlyDictionary<WorkClass, WorkLimit> limits, Terrain terrain) =>
        [.. limits.Values.Select(limit => MarineKt(limit, terrain)).Append(Wind.GaleKt).Distinct().Order()];
}
