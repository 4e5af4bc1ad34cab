using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What a plan is made anew for when it changes (science.md 8.4).</summary>
/// <param name="Standing">Ids of the messages that stand for the garden.</param>
/// <param name="StopTold">The stop that people have been told; null while nothing would close the garden.</param>
/// <param name="ForWind">Against wind, or only against the water of rain.</param>
public sealed record PlanOccasion(GardenBook Book, string Standing, IReadOnlyDictionary<string, JobState> States, Instant? StopTold, bool ForWind)
{
    public bool IsSame(PlanOccasion other) =>
        ReferenceEquals(Book, other.Book)
        && (Standing, StopTold, ForWind) == (other.Standing, other.StopTold, other.ForWind)
        && States.Count == other.States.Count
        && States.All(state => other.States.TryGetValue(state.Key, out var now) && now == state.Value);
}

/// <summary>
/// A plan that stays in force until there is another occasion, a limit is crossed, a job should have ended without word of it, or it is
/// six hours old.
/// </summary>
public sealed record KeptPlan(GardenPlan Plan, PlanOccasion Occasion)
{
    /// <summary>The pace of full advisories: what is older has missed one.</summary>
    private static readonly Duration Longest = Duration.FromHours(6);

    public bool Holds(PlanOccasion occasion, Instant now) =>
        now >= Plan.Made
        && now < Plan.Made + Longest
        && Occasion.IsSame(occasion)
        && Plan.Jobs.All(job => job.End > now)
        && !Plan.WorkStops.Values.Any(stop => stop.Earliest > Plan.Made && stop.Earliest <= now);
}
