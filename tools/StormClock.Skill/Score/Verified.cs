using StormClock.Core.Hazards;

namespace StormClock.Skill.Score;

/// <summary>What one advisory said of one wind at one place, and what came. Hours count from the synoptic time.</summary>
/// <param name="Chance">0 to 1, by each of <see cref="Scorer.Leads"/>.</param>
/// <param name="Official">The same by the official probabilities.</param>
/// <param name="Early">Earliest reasonable time, as the product gives it. Null when the wind (almost) never comes.</param>
/// <param name="Tenth">One member in ten of those that bring the wind brings it sooner.</param>
/// <param name="Likely">Half of the arrivals are sooner.</param>
/// <param name="Late">Nine in ten are sooner.</param>
/// <param name="End">Half of the ends are sooner.</param>
/// <param name="Arrival">What came; null when it never did.</param>
/// <param name="Ended">When it ended; null when it never came or its end is not known.</param>
public sealed record Verified(
    string Storm, string Number, string Place, double ThresholdKt, double[] Chance, double[] Official,
    double? Early, double? Tenth, double? Likely, double? Late, double? End, double? Arrival, double? Ended)
{
    // An issue comes three hours after its synoptic time; where the wind already blows then there is nothing to foretell.
    private const double HoursToIssue = 3;

    /// <summary>Null where the case does not count: no official row for this wind, or the wind is there at issue.</summary>
    public static Verified? Of(ClockCase from, ClockPlace place, WindMembers members, double thresholdKt, ClockOutcome outcome)
    {
        // Places without an official row for this wind carry −1 throughout.
        if (outcome.OfficialPercent[0] < 0 || outcome.ArrivalOfWholeRadii <= HoursToIssue) return null;

        var said = WindCrossing.Of(members, thresholdKt, members.Origin + Duration.FromHours(HoursToIssue));
        return new(
            from.Advisory.StormId, from.Advisory.Number, place.Name, thresholdKt,
            Array.ConvertAll(Scorer.Leads, lead => said.ChanceBy[lead]), Array.ConvertAll(outcome.OfficialPercent, percent => percent / 100),
            Hours(said.EarliestReasonable), said.EarliestReasonable is null ? null : TenthHour(members.ArrivalHours(thresholdKt)), Hours(said.MostLikely),
            Hours(said.Latest), Hours(said.End), outcome.Arrival, outcome.End);

        double? Hours(Instant? at) => (at - members.Origin)?.TotalHours;
    }

    private static double TenthHour(ReadOnlySpan<float> hours)
    {
        var arrived = new List<float>(hours.Length);
        foreach (var hour in hours)
        {
            if (!float.IsNaN(hour)) arrived.Add(hour);
        }

        arrived.Sort();
        return arrived[(int)(0.1 * (arrived.Count - 1))];
    }
}
