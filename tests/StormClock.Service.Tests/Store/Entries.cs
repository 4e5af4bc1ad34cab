using StormClock.Core.Reminders;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;

namespace StormClock.Service.Tests.Store;

/// <summary>Outbox entries with everything filled in, for tests that care about one thing.</summary>
internal static class Entries
{
    public static readonly Instant Start = Instant.FromUtc(2027, 9, 12, 10, 0);

    public static OutboxEntry Make(
        string occasion, Instant? moment = null, Duration? useful = null, string garden = "hollow", string channel = "email", bool urgent = false)
    {
        var key = new ReminderKey(garden, "2027-1", "ada", ReminderReason.StageChanged, occasion, channel);
        var ids = OutboxIds.For(key, "test-folder");
        var from = moment ?? Start;
        return new OutboxEntry(
            ids.EntryId, key.ToString(), channel, garden, "ada", nameof(ReminderReason.StageChanged), "AL012027/4/2027-09-12T09:00Z", ["b1", "b2"],
            new Outgoing(ids.EntryId, ids.MessageId, ids.ThreadId, "Ada", "ada@garden.example", $"Main work: {occasion}", $"Text of {occasion}", $"<p>{occasion}</p>", Instant.FromUtc(2027, 9, 19, 9, 0)),
            Start, from, from + (useful ?? Duration.FromHours(6)), urgent, OutboxState.Waiting, 0, from, null, null);
    }
}
