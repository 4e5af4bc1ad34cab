using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>When one class of work stops at one site.</summary>
/// <param name="MarineKt">The marine wind at which it stops there.</param>
/// <param name="Crossing">Chance and times over all members.</param>
/// <param name="StopHours">By member, hours after the members' origin; NaN where it never stops.</param>
public sealed record ClassStop(WorkClass Class, double MarineKt, WindCrossing Crossing, ReadOnlyMemory<float> StopHours);

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

    /// <summary>Thresholds an ensemble needs for these limits and for the summary of 34, 50 and 64 kt, ascending.</summary>
    public static IReadOnlyList<double> ThresholdsKt(IReadOnlyDictionary<WorkClass, WorkLimit> limits, Terrain terrain) =>
        [.. limits.Values.Select(limit => MarineKt(limit, terrain)).Concat(ClockRow.ThresholdsKt).Distinct().Order()];

    /// <summary>The stop of each class that has a limit, from members made with <see cref="ThresholdsKt"/>.</summary>
    public static IReadOnlyDictionary<WorkClass, ClassStop> Of(
        WindMembers members, IReadOnlyDictionary<WorkClass, WorkLimit> limits, Terrain terrain, Instant now) =>
        limits.ToDictionary(limit => limit.Key, limit => Of(members, limit.Key, MarineKt(limit.Value, terrain), now));

    private static ClassStop Of(WindMembers members, WorkClass work, double marineKt, Instant now) =>
        new(work, marineKt, WindCrossing.Of(members, marineKt, now), members.ArrivalHours(marineKt).ToArray());
}
