using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>When a class of work stops, over the members in which it comes; null when it (almost) never does.</summary>
/// <param name="Earliest">Earliest reasonable (10 %): nothing of this class is planned after it.</param>
/// <param name="Likely">Most likely (50 %).</param>
public sealed record WorkStop(Instant? Earliest, Instant? Likely);

/// <summary>One job with its time.</summary>
/// <param name="StartBy">Latest start that still leaves time for it and all that must follow, at 90 %; rounded down to 15 min.</param>
/// <param name="ChanceDone">0 to 1, given that the wind comes; work may take longer or shorter than the book has it.</param>
public sealed record PlannedJob(
    Job Job, IReadOnlyList<string> People, Instant Start, Instant End, Instant StartBy, double ChanceDone);

/// <summary>A job that does not fit, with the reason and the cheap thing to do instead.</summary>
public sealed record LeftOutJob(Job Job, LeftReason Why, string? Fallback)
{
    /// <summary>Somebody said so; it is no news that it does not fit.</summary>
    public bool Answered { get; init; }
}

public sealed record Shortage(string Material, double Need, double Have, double Missing, string Unit)
{
    /// <summary>Start of the first planned job for which there is not enough; null when not known.</summary>
    public Instant? NeededAt { get; init; }
}

/// <param name="UsedM2">By the planned jobs and by what has been moved already.</param>
public sealed record StoreUse(string StoreId, double UsedM2, double? FreeM2, double UsedM3, double? FreeM3)
{
    /// <summary>Ids of the planned jobs whose things go here.</summary>
    public IReadOnlyList<string> Jobs { get; init; } = [];

    /// <summary>Ids of the jobs left out whose things were to go here.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
}

/// <summary>How a plan departs from the one last told.</summary>
public enum PlanChangeKind { Earlier, Later, OtherPeople, New, Dropped, Done }

/// <summary>Why it does.</summary>
public enum PlanChangeCause
{
    /// <summary>It was not in the plan last told.</summary>
    NotTold,
    NotInBook,
    Done,
    SaidCannot,
    LeftOut,
    BetterLeft,
    OtherPeople,

    /// <summary>This work must stop sooner than last told.</summary>
    StopsSooner,

    /// <summary>It was not begun when it was due.</summary>
    NotBegun,

    /// <summary>The order of the work changed.</summary>
    OtherOrder,
}

public sealed record PlanChange(string JobId, PlanChangeKind Kind, PlanChangeCause Why);

/// <summary>What to do in which order by when, and what to leave.</summary>
public sealed record GardenPlan(
    Instant Made,
    IReadOnlyDictionary<WorkClass, WorkStop> WorkStops,
    IReadOnlyList<PlannedJob> Jobs,
    IReadOnlyList<LeftOutJob> LeftOut,
    IReadOnlyList<Shortage> Buy,
    IReadOnlyList<StoreUse> Stores)
{
    /// <summary>Open jobs that are better left than done, with the reason.</summary>
    public IReadOnlyList<LeftOutJob> BetterLeft { get; init; } = [];

    /// <summary>Against the plan last told; empty when none was.</summary>
    public IReadOnlyList<PlanChange> Changes { get; init; } = [];
}
