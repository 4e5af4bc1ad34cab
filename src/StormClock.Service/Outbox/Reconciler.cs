using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <summary>Why reconciling wrote an entry.</summary>
public enum ReconcileReason
{
    /// <summary>Wanted for the first time.</summary>
    New,

    /// <summary>Wanted for the first time, but its time of use had passed already: kept as expired, so that it can be seen.</summary>
    NewButTooLate,

    /// <summary>Still wanted, with other contents or times, and not yet tried.</summary>
    Rewritten,

    /// <summary>Tried already, so its bytes stay; its time of use has moved.</summary>
    UsefulUntilMoved,

    /// <summary>Withdrawn or expired unsent before, and wanted again with time left.</summary>
    WantedAgain,

    NoLongerWanted,

    /// <summary>Its time of use passed while it waited.</summary>
    TimeOfUsePassed,
}

/// <param name="Entry">The entry as it stands now.</param>
public sealed record OutboxChange(OutboxEntry Entry, ReconcileReason Reason);

/// <summary>
/// Brings the outbox of one garden in line with what is wanted now. The same wish never makes a second entry, and
/// reconciling twice changes nothing the second time.
/// </summary>
public static class Reconciler
{
    private const string TooLate = "time of use had passed before it was written";
    private const string Passed = "time of use passed before it could be sent";
    private const string Unwanted = "no longer wanted";

    /// <summary>Decides on and writes the changes in the transaction that holds the decision they rest on.</summary>
    /// <param name="wanted">Everything wanted for this garden now, rendered, as <see cref="OutboxState.Waiting"/> entries.</param>
    public static IReadOnlyList<OutboxChange> Apply(StoreTransaction transaction, string gardenId, IReadOnlyList<OutboxEntry> wanted, Instant now)
    {
        if (wanted.FirstOrDefault(entry => entry.GardenId != gardenId) is { } stray)
            throw new ArgumentException($"The entry {stray.Key} is of another garden than {gardenId}.", nameof(wanted));
        var changes = Decide(wanted, OutboxTable.StockOf(transaction, gardenId), now);
        foreach (var change in changes)
        {
            if (change.Reason is ReconcileReason.New or ReconcileReason.NewButTooLate) OutboxTable.Insert(transaction, change.Entry);
            else OutboxTable.Update(transaction, change.Entry);
        }

        return changes;
    }

    /// <summary>Pure: the changes that lead from what is stored to what is wanted.</summary>
    /// <param name="wanted">Where two have the same key, the first counts.</param>
    public static IReadOnlyList<OutboxChange> Decide(IReadOnlyList<OutboxEntry> wanted, OutboxStock stored, Instant now)
    {
        var wantedByKey = wanted.DistinctBy(entry => entry.Key).ToDictionary(entry => entry.Key);
        var storedKeys = stored.Open.Select(entry => entry.Key).Concat(stored.Final.Keys).ToHashSet();
        return
        [
            .. stored.Open.Select(entry => Change(entry, wantedByKey.GetValueOrDefault(entry.Key), now)).OfType<OutboxChange>(),
            .. wantedByKey.Values.Where(entry => !storedKeys.Contains(entry.Key)).Select(entry => Add(entry, now)),
        ];
    }

    private static OutboxChange Add(OutboxEntry wanted, Instant now) => OutboxTimes.HasPassed(wanted, now)
        ? new(Settle(AtRest(wanted), OutboxState.Expired, TooLate, now), ReconcileReason.NewButTooLate)
        : new(AtRest(wanted), ReconcileReason.New);

    private static OutboxChange? Change(OutboxEntry stored, OutboxEntry? wanted, Instant now) => stored.State switch
    {
        OutboxState.Waiting when wanted is null => OutboxTimes.HasPassed(stored, now)
            ? new(Settle(stored, OutboxState.Expired, Passed, now), ReconcileReason.TimeOfUsePassed)
            : new(Settle(stored, OutboxState.Withdrawn, Unwanted, now), ReconcileReason.NoLongerWanted),
        OutboxState.Waiting => OutboxTimes.HasPassed(wanted, now)
            ? new(Settle(stored, OutboxState.Expired, Passed, now), ReconcileReason.TimeOfUsePassed)
            : Renew(stored, wanted),
        OutboxState.Withdrawn or OutboxState.Expired when wanted is not null && !OutboxTimes.HasPassed(wanted, now) =>
            new(Revive(stored, wanted), ReconcileReason.WantedAgain),
        // Being sent now, or not wanted: nothing changes that.
        _ => null,
    };

    private static OutboxChange? Renew(OutboxEntry stored, OutboxEntry wanted)
    {
        // After a try the other side may hold it already, and another try must bring the same bytes under the same id.
        if (stored.Attempts > 0)
        {
            return stored.UsefulUntil == wanted.UsefulUntil
                ? null
                : new(stored with { UsefulUntil = wanted.UsefulUntil }, ReconcileReason.UsefulUntilMoved);
        }

        var rewritten = Rewrite(stored, wanted);
        return IsSame(rewritten, stored) ? null : new(rewritten, ReconcileReason.Rewritten);
    }

    private static OutboxEntry Revive(OutboxEntry stored, OutboxEntry wanted) => stored.Attempts > 0
        ? stored with { UsefulUntil = wanted.UsefulUntil, State = OutboxState.Waiting, Settled = null, Detail = null }
        : Rewrite(stored, wanted);

    private static OutboxEntry Rewrite(OutboxEntry stored, OutboxEntry wanted) =>
        AtRest(wanted) with { Id = stored.Id, Written = stored.Written };

    /// <summary>An entry that nobody has tried to send.</summary>
    private static OutboxEntry AtRest(OutboxEntry wanted) => wanted with
    {
        State = OutboxState.Waiting,
        Attempts = 0,
        NextTry = wanted.Moment,
        Settled = null,
        Detail = null,
    };

    private static OutboxEntry Settle(OutboxEntry entry, OutboxState state, string detail, Instant now) =>
        entry with { State = state, Settled = now, Detail = detail };

    private static bool IsSame(OutboxEntry one, OutboxEntry other) =>
        one.JobIds.SequenceEqual(other.JobIds) && one with { JobIds = other.JobIds } == other;
}
