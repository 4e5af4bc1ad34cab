using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <param name="Waiting">Not sent yet.</param>
/// <param name="Parked">Refused for good in the last days; only the keeper can mend what made it so.</param>
public sealed record ChannelCount(string Name, int Waiting, int Parked);

/// <summary>Whether messages go out; a sender that is dead must not go unnoticed.</summary>
/// <param name="Counts">How many entries are in each state.</param>
/// <param name="OldestUnsentAge">How long the longest waiting entry has been sendable; null when nothing sendable is unsent.</param>
/// <param name="OldestUnsentDetail">What the other side last said about that entry.</param>
public sealed record OutboxHealth(IReadOnlyDictionary<OutboxState, int> Counts, Duration? OldestUnsentAge, string? OldestUnsentDetail)
{
    /// <summary>A refusal is shown this long.</summary>
    private static readonly Duration ParkedShown = Duration.FromDays(7);

    /// <summary>Longer than any try that goes well takes: nothing goes out.</summary>
    public bool IsStuck => OldestUnsentAge > Duration.FromMinutes(30);

    /// <summary>Each channel that has something waiting or parked, by name.</summary>
    public IReadOnlyList<ChannelCount> Channels { get; init; } = [];

    public static OutboxHealth Of(StoreReader reader, Instant now)
    {
        var oldest = OutboxTable.InState(reader, OutboxState.Waiting)
            .Concat(OutboxTable.InState(reader, OutboxState.Claimed))
            .Where(entry => entry.Moment <= now)
            .MinBy(entry => entry.Moment);
        return new OutboxHealth(
            Enum.GetValues<OutboxState>().ToDictionary(state => state, state => OutboxTable.Count(reader, state)),
            oldest is null ? null : now - oldest.Moment,
            oldest?.Detail)
        {
            Channels = CountByChannel(reader, now),
        };
    }

    private static IReadOnlyList<ChannelCount> CountByChannel(StoreReader reader, Instant now)
    {
        var waiting = OutboxTable.InState(reader, OutboxState.Waiting).Concat(OutboxTable.InState(reader, OutboxState.Claimed)).ToLookup(entry => entry.Channel);
        var parked = OutboxTable.InState(reader, OutboxState.Refused).Where(entry => entry.Settled > now - ParkedShown).ToLookup(entry => entry.Channel);
        return
        [
            .. waiting.Concat(parked).Select(group => group.Key).Distinct().Order(StringComparer.Ordinal)
                .Select(name => new ChannelCount(name, waiting[name].Count(), parked[name].Count())),
        ];
    }
}
