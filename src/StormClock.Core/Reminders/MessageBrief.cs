using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>A caution that fits the work or the hour; the service has the words.</summary>
public enum Caution
{
    OfficialOrders, Ladder, Lifting, Wires, Water, Heat, Saw, Generator, Alone, Lightning, Sharp, Tetanus, Trees, Lull,
}

/// <summary>A job as a message shows it.</summary>
/// <param name="Start">When the plan begins it; null on recheck lists.</param>
/// <param name="Why">Why it is left out; null where it is not.</param>
/// <param name="Token">Names the job in a link: the job id, or the undo id on recheck lists.</param>
public sealed record BriefJob(
    string Token,
    JobKind Kind,
    string ItemName,
    int Count,
    string AreaName,
    string SiteName,
    int Minutes,
    IReadOnlyList<string> PeopleNames,
    IReadOnlyList<MaterialNeed> Bring,
    Instant? Start,
    Instant? StartBy,
    WorkClass Class,
    string? Fallback = null,
    LeftReason? Why = null)
{
    /// <summary>Where its things go; null where they go nowhere.</summary>
    public string? StoreName { get; init; }

    /// <summary>What to beware of in this very work, and with this thing; empty where the usual cautions suffice.</summary>
    public IReadOnlyList<string> TakeCare { get; init; } = [];
}

/// <summary>When a class of work stops, where that is sooner than the garden closes.</summary>
public sealed record ClassStop(WorkClass Class, Instant At);

/// <summary>What is worth telling of a changed plan, with the jobs it is true of.</summary>
public sealed record BriefNews(PlanNewsKind Kind, IReadOnlyList<BriefJob> Jobs);

/// <summary>
/// Everything one message says, as data in the order a reader meets it (product.md 6); the service only puts it into words.
/// Times are instants; the reader's zone and units are named here.
/// </summary>
/// <param name="StopEarliest">When garden work could have to stop at the earliest; the first thing said.</param>
/// <param name="Jobs">Next jobs in working order by site and area; on recheck the ordered look-and-undo list.</param>
/// <param name="NextBy">When the next message is due at the latest; null when this is the last.</param>
public sealed record MessageBrief(
    ReminderReason Why,
    string GardenName,
    DateTimeZone Zone,
    UnitSystem Units,
    Stage Stage,
    bool Leave,
    Instant? LeaveBy,
    StageReason Reason,
    Instant? StopEarliest,
    Instant? StopLikely,
    IReadOnlyList<BriefJob> Jobs,
    IReadOnlyList<Shortage> Buy,
    IReadOnlyList<BriefJob> LeftOut,
    IReadOnlyList<BriefNews> Changed,
    IReadOnlyList<Caution> Cautions,
    Instant? NextBy)
{
    /// <summary>Classes of the jobs shown that stop before <see cref="StopEarliest"/>, the first first.</summary>
    public IReadOnlyList<ClassStop> SoonerStops { get; init; } = [];

    /// <summary>The sources that a message about silence speaks of; empty where the forecast itself has grown old.</summary>
    public IReadOnlyList<SourceSilence> Silences { get; init; } = [];

    /// <summary>While the garden is closed: since when, who said to be in, and of whom nothing was heard that the reader should phone.</summary>
    public Instant? ClosedSince { get; init; }

    public IReadOnlyList<SaidIn> In { get; init; } = [];

    public IReadOnlyList<string> NotHeardOf { get; init; } = [];
}
