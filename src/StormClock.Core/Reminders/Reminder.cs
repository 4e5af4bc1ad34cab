using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>Why a message is wanted.</summary>
public enum ReminderReason
{
    /// <summary>The stage changed, up or down.</summary>
    StageChanged,

    /// <summary>A day on which the person has work begins.</summary>
    WorkDay,

    /// <summary>The order of work changed, or a job no longer fits.</summary>
    OrderChanged,

    /// <summary>An evacuation or shelter order, or a leave-by time.</summary>
    Leave,

    /// <summary>The forecast turned away.</summary>
    StandDown,

    /// <summary>It is over: look, undo, put right, record.</summary>
    Recheck,

    /// <summary>A source has gone silent while something is due.</summary>
    FeedSilent,

    /// <summary>Work that should have been begun by now is not.</summary>
    Late,

    /// <summary>An order or leave-by that was told holds no more.</summary>
    OrderLifted,

    /// <summary>A source whose silence was told is heard again.</summary>
    FeedHeard,

    /// <summary>Somebody has not said "I am in" an hour after the garden was closed.</summary>
    NotIn,

    /// <summary>Nothing is due and the box still listens; weekly, to the keeper.</summary>
    Listening,
}

/// <summary>
/// Deterministic name of one wanted message: <c>garden|episode|person|reason|occasion|channel</c> (product.md 3). The same
/// situation always gives the same key, so that reconciling twice sends once.
/// </summary>
/// <param name="Occasion">Stage and how often it changed, local date, plan change number, day of a recheck, id of an order, hour, day of a
/// weekly line, or the sources that fell silent and since when.</param>
public sealed record ReminderKey(
    string GardenId, string EpisodeId, string PersonId, ReminderReason Reason, string Occasion, string Channel)
{
    public override string ToString() => $"{GardenId}|{EpisodeId}|{PersonId}|{Reason}|{Occasion}|{Channel}";
}

/// <summary>A message that should reach a person.</summary>
/// <param name="Moment">Not before this.</param>
/// <param name="UsefulUntil">Never after this.</param>
/// <param name="Urgent">Passes quiet hours.</param>
public sealed record Reminder(ReminderKey Key, Person To, Instant Moment, Instant UsefulUntil, bool Urgent, MessageBrief Brief);
