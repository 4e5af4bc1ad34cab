using StormClock.Service.Delivery;

namespace StormClock.Service.Outbox;

/// <summary>Pure steps in the life of one entry.</summary>
public static class Settlement
{
    private const string Interrupted = "interrupted while it was being sent; sent again under the same id";

    /// <summary>A process that dies over one message more often than this may be dying of it.</summary>
    private const int TriesAtOnce = 5;

    /// <summary>The entry as it stands when a dispatcher takes it; null when it must not be sent now.</summary>
    public static OutboxEntry? Claim(OutboxEntry entry, Instant now) =>
        entry.State == OutboxState.Waiting && OutboxTimes.IsDue(entry, now) && !OutboxTimes.HasPassed(entry, now)
            ? entry with { State = OutboxState.Claimed, Attempts = entry.Attempts + 1 }
            : null;

    /// <summary>The claimed entry when nothing was done about it.</summary>
    public static OutboxEntry PutBack(OutboxEntry claimed) => claimed with { State = OutboxState.Waiting, Attempts = claimed.Attempts - 1 };

    public static OutboxEntry Expire(OutboxEntry entry, Instant now) => entry with
    {
        State = OutboxState.Expired,
        Settled = now,
        Detail = entry.Detail is null ? "time of use passed" : $"time of use passed; last: {entry.Detail}",
    };

    /// <summary>The claimed entry after a try ended.</summary>
    public static OutboxEntry Settle(OutboxEntry claimed, DeliveryOutcome outcome, Instant now) => outcome.Result switch
    {
        DeliveryResult.Delivered => claimed with { State = OutboxState.Sent, Settled = now, Detail = outcome.Detail },
        DeliveryResult.Refused => claimed with { State = OutboxState.Refused, Settled = now, Detail = outcome.Detail },
        DeliveryResult.TryAgain or DeliveryResult.Unknown =>
            WaitOn(claimed with { Detail = outcome.Detail }, now + Backoff.After(claimed.Attempts, outcome.After), now),
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome.Result, "Not a delivery result."),
    };

    /// <summary>
    /// A claimed entry that nobody is sending: the process died, or the end of its try could not be written. The first
    /// times it is tried again at once; an entry that keeps ending so must not hold up the others.
    /// </summary>
    public static OutboxEntry Release(OutboxEntry orphan, Instant now) => WaitOn(
        orphan with { Detail = Interrupted }, orphan.Attempts <= TriesAtOnce ? now : now + Backoff.After(orphan.Attempts - 1), now);

    private static OutboxEntry WaitOn(OutboxEntry entry, Instant nextTry, Instant now) => nextTry >= entry.UsefulUntil
        ? Expire(entry, now)
        : entry with { State = OutboxState.Waiting, NextTry = nextTry };
}
