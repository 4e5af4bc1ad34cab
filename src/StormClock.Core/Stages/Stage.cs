namespace StormClock.Core.Stages;

/// <summary>How far the garden has got with a storm, in rising order (product.md 2). A word of ours, never an official level.</summary>
public enum Stage
{
    /// <summary>Nothing within reach in five days. Never worded as safety.</summary>
    NothingDue,

    /// <summary>It may come: walk the plot, refresh the survey, buy what is short.</summary>
    LookOver,

    /// <summary>Pick, prune while collection runs, shop.</summary>
    SlowWork,

    /// <summary>Tie, weigh down, lay flat, move.</summary>
    MainWork,

    /// <summary>Glass, loose things, lids, soak the pots that stay.</summary>
    LastRound,

    /// <summary>Stop: no garden work for anyone.</summary>
    GardenClosed,

    /// <summary>After: look, undo, put right, record.</summary>
    Recheck,
}

/// <summary>Which number or word made the stage hold.</summary>
public enum StageCause
{
    /// <summary>Nothing crossed a limit.</summary>
    None,

    /// <summary>The chance of 34 kt wind within the forecast.</summary>
    Chance,

    /// <summary>How soon that wind could arrive.</summary>
    Arrival,

    /// <summary>The ground work limit, or 34 kt marine, could be crossed now.</summary>
    WorkStops,

    /// <summary>An official warning or watch for the place.</summary>
    Alert,

    /// <summary>An official alert whose area cannot be matched with the place: it may concern it.</summary>
    UnmatchedAlert,

    /// <summary>An official order to leave or shelter.</summary>
    Order,

    /// <summary>A leave-by time of the people's own.</summary>
    LeaveByNote,

    /// <summary>A note entered by hand.</summary>
    Note,

    /// <summary>The first main job must be begun soon.</summary>
    StartBy,

    /// <summary>The wind has passed and the official end has come.</summary>
    OfficialEnd,

    /// <summary>The wind of the forecast has passed, but no official end was heard.</summary>
    WindPassed,

    /// <summary>The forecast turned away before any unsafe wind.</summary>
    TurnedAway,

    /// <summary>Rain alone: for work against water.</summary>
    Rain,
}

/// <summary>Why a stage holds: the source, when it spoke, and the number that crossed a limit.</summary>
/// <param name="Source">As a person would name it, e.g. <c>IAN advisory 16</c>.</param>
/// <param name="Issued">When the source was issued; null when there is none.</param>
/// <param name="Chance">0 to 1, where the cause is a chance.</param>
/// <param name="At">The time that counts: earliest reasonable arrival, onset or leave-by.</param>
public sealed record StageReason(StageCause Cause, string Source, Instant? Issued, double? Chance = null, Instant? At = null)
{
    /// <summary>Chance and time are of wind too strong for work outside, by a point forecast, and not of 34 kt.</summary>
    public bool IsLocal { get; init; }

    /// <summary>Rain of 24 h to be ready for, mm, where the cause is rain.</summary>
    public double? RainMm { get; init; }
}
