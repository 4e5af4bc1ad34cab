using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>
/// What people were last told of the plan, so that a change is told once and noise is not told at all (science.md 8.4).
/// </summary>
/// <param name="Stops">Earliest stop of each class as last told.</param>
/// <param name="StartBys">Latest start by job id as last told.</param>
/// <param name="Changes">How often a change has been told in this episode; part of reminder keys.</param>
/// <param name="ChangedAt">When the last change was found; null when none was.</param>
public sealed record Announced(
    IReadOnlyDictionary<WorkClass, Instant> Stops,
    IReadOnlyDictionary<string, Instant> StartBys,
    int Changes,
    Instant? ChangedAt)
{
    /// <summary>What changed last; empty in a standing that was kept before it was data.</summary>
    public IReadOnlyList<PlanNewsLine> News { get; init; } = [];

    /// <summary>Starts and people as last told; empty in a standing that was kept before they were.</summary>
    public IReadOnlyList<ToldJob> Jobs { get; init; } = [];

    /// <summary>Ids of the people who had work when the plan was last told and have none since it changed last.</summary>
    public IReadOnlyList<string> Idle { get; init; } = [];

    /// <summary>The plan as last told; null when none was.</summary>
    public ToldPlan? Plan() => Jobs.Count == 0 ? null : new(Jobs, Stops);

    public static Announced Nothing { get; } = new(new Dictionary<WorkClass, Instant>(), new Dictionary<string, Instant>(), 0, null);
}
