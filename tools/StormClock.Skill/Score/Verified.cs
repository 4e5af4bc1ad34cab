using StormClock.Core.Hazards;

namespace StormClock.Skill.Score;

/// <summary>What one advisory said of one wind at one place, and what came. Hours count from the synoptic time.</summary>
/// <param name="Chance">0 to 1, by each of <see cref="Scorer.Leads"/>.</param>
/// <param name="Official">The same by the official probabilities.</param>
/// <param name="Early">Earliest reasonable time: one arrival in ten is sooner. Null when the wind (almost) never comes.</param>
/// <param name="Likely">Half of the arrivals are sooner.</param>
/// <param name="Late">Nine in ten are sooner.</param>
/// <param name="End">Half of the ends are sooner.</param>
/// <param name="Arrival">What came; null when it never did.</param>
/// <param name="Ended">When it ended; null when it never came or its end is not known.</param>
public sealed record Verified(
    string Storm, string Number, string Place, double ThresholdKt, double[] Chance, double[] Official,
    double? Early, double? Likely, double? Late, double? End, double? Arrival, double? Ended)
{
    // An issue comes three hours after its synoptic time; where the wind already blows then there is nothing to foretell.
    private const double HoursToIssue = 3;

    // By this the product calls a wind "(almost) never", and gives no times.
    private const double LeastChance = 0.005;

    /// <summary>Null where the case does not count: no official row for this wind, or the wind is there at issue.</summary>
    public static Verified? Of(ClockCase from, ClockPlace place, WindMembers members, double thresholdKt, ClockOutcome outcome)
    {
        // Places without an official row for this wind carry −1 throughout.
        if (outcome.OfficialPercent[0] < 0 || outcome.ArrivalOfWholeRadii <= HoursToIssue) return null;

        var sorted = Arrived(members.ArrivalHours(thresholdKt));
        var chance = Array.ConvertAll(Scorer.Leads, lead => sorted.Count(hour => hour <= lead) / (double)members.Count);
        var official = Array.ConvertAll(outcome.OfficialPercent, percent => percent / 100);
        var told = sorted.Length >= LeastChance * members.Count && sorted.Length > 0;
        return new(
            from.Advisory.StormId, from.Advisory.Number, place.Name, thresholdKt, chance, official,
            told ? At(sorted, 0.1) : null, told ? At(sorted, 0.5) : null, told ? At(sorted, 0.9) : null,
            told ? At(Arrived(members.EndHours(thresholdKt)), 0.5) : null, outcome.Arrival, outcome.End);
    }

    private static double At(float[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];

    private static float[] Arrived(ReadOnlySpan<float> hours)
    {
        var arrived = new List<float>(hours.Length);
        foreach (var hour in hours)
        {
            if (!float.IsNaN(hour)) arrived.Add(hour);
        }

        arrived.Sort();
        return [.. arrived];
    }
}
