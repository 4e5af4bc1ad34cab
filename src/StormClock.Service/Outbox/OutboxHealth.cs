using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <summary>Whether messages go out; a sender that is dead must not go unnoticed.</summary>
/// <param name="Counts">How many entries are in each state.</param>
/// <param name="OldestUnsentAge">How long the longest waiting entry has been sendable; null when nothing sendable is unsent.</param>
/// <param name="OldestUnsentDetail">What the other side last said about that entry.</param>
public sealed record OutboxHealth(IReadOnlyDictionary<OutboxState, int> Counts, Duration? OldestUnsentAge, string? OldestUnsentDetail)
{
    public static OutboxHealth Of(StoreReader reader, Instant now)
    {
        var oldest = OutboxTable.InState(reader, OutboxState.Waiting)
            .Concat(OutboxTable.InState(reader, OutboxState.Claimed))
            .Where(entry => entry.Moment <= now)
            .MinBy(entry => entry.Moment);
        return new OutboxHealth(
            Enum.GetValues<OutboxState>().ToDictionary(state => state, state => OutboxTable.Count(reader, state)),
            oldest is null ? null : now - oldest.Moment,
            oldest?.Detail);
    }
}
