namespace StormClock.Core.Stages;

/// <summary>
/// What must be remembered from one decision to the next so that stages rise at once and fall slowly.
/// </summary>
/// <param name="EpisodeId">Names the spell of hazard; null while nothing is due.</param>
/// <param name="Since">When this stage began.</param>
/// <param name="Changes">How often the stage has changed in this episode; part of reminder keys.</param>
/// <param name="LastRise">When it last rose.</param>
/// <param name="FallSeenIn">Id of the full advisory in which a fall was first justified; null when none is pending.</param>
/// <param name="StoodDown">When the forecast turned away; null otherwise.</param>
public sealed record StageStanding(
    string? EpisodeId,
    Stage Stage,
    StageReason Reason,
    Instant Since,
    int Changes,
    Instant? LastRise,
    string? FallSeenIn,
    Instant? StoodDown)
{
    public static StageStanding Calm(Instant now) =>
        new(null, Stage.NothingDue, new(StageCause.None, "", null), now, 0, null, null, null);
}
