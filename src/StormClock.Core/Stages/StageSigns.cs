using StormClock.Core.Advisories;
using StormClock.Core.Water;

namespace StormClock.Core.Stages;

/// <summary>An official order that outranks all work.</summary>
public enum OfficialOrder { None, Shelter, Evacuate }

/// <summary>The signs that a stage is read from, gathered for one garden at one instant.</summary>
/// <param name="Chance">Chance that 34 kt wind (or, for wind that is no cyclone, the ground work limit) is still to come or blowing.</param>
/// <param name="Earliest">Earliest reasonable arrival of that wind; null when it (almost) never comes.</param>
/// <param name="GroundStop">Earliest reasonable stop of ground work, leave-by included.</param>
/// <param name="Warned">An official warning of such wind stands for the place.</param>
/// <param name="Unmatched">An alert whose area cannot be matched stands: never silence, never more than a look.</param>
/// <param name="FirstMainStartBy">Latest start of the first main job not done; null when there is none.</param>
/// <param name="Advisory">Id of the newest full advisory, so that two successive ones can be told apart; null without one.</param>
/// <param name="LastWord">The newest full advisory is final, or a Cancel withdrew the warning: no second one will follow.</param>
/// <param name="WindOver">The official end has come and the wind has been below the limit for 3 h in every member in which it arrived.</param>
/// <param name="OfficialEnd">An official end was heard: the last alert ended, or the storm's last advisory came.</param>
/// <param name="Daylight">Ground work light now.</param>
/// <param name="Why">The source behind the numbers.</param>
public sealed record StageSigns(
    Instant Now,
    double Chance,
    Instant? Earliest,
    Instant? GroundStop,
    bool Warned,
    bool Unmatched,
    OfficialOrder Order,
    Instant? LeaveBy,
    Instant? FirstMainStartBy,
    string? Advisory,
    bool LastWord,
    bool WindOver,
    bool OfficialEnd,
    bool Daylight,
    StageSource Why)
{
    /// <summary>Rain to be ready for at the wettest site.</summary>
    public RainOutlook Rain { get; init; } = RainOutlook.None;
}

/// <param name="Forecast">Name of the source of chance and arrival.</param>
/// <param name="Official">Name of the warning or order, when one stands.</param>
public sealed record StageSource(string Forecast, Instant? ForecastIssued, string? Official, Instant? OfficialIssued)
{
    /// <summary>The official table whose larger chance is taken, since it and the forecast differ; null when none is.</summary>
    public LargerChance? Larger { get; init; }

    /// <summary>The chance and its time are of wind too strong for work outside, by a point forecast, and not of 34 kt.</summary>
    public bool IsLocal { get; init; }

    /// <summary>The note that names the hour to leave; null where an official order does.</summary>
    public LeaveByNote? LeaveNote { get; init; }

    /// <summary>Why people are to leave or to shelter: whoever said so is named, and a note is no order.</summary>
    public StageReason ToLeave(Instant? by) => LeaveNote is { } note
        ? new(StageCause.LeaveByNote, note.Title, note.Made, At: by)
        : new(StageCause.Order, Official ?? "official order", OfficialIssued, At: by);
}

/// <param name="Table">Name of the table.</param>
/// <param name="OwnChance">What the chance would be without it.</param>
public sealed record LargerChance(string Table, Instant Issued, double OwnChance);
