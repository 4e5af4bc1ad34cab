using StormClock.Core.Stages;
using StormClock.Service.Outbox;

namespace StormClock.Service.Desk;

/// <summary>Something that happened, in the words of the rehearsal's JSON (product.md 4).</summary>
/// <param name="Kind">advisory, stage, plan, reminder, sent, done, missed, standdown, recheck or trouble.</param>
public sealed record JournalEntry(
    Instant At,
    string Kind,
    string? Garden = null,
    Stage? Stage = null,
    string? Reason = null,
    string? To = null,
    string? Subject = null,
    IReadOnlyList<string>? Jobs = null,
    string? Key = null)
{
    /// <summary>Reason of an entry of kind done that says that somebody is in.</summary>
    public const string In = "In";

    public static JournalEntry Sent(OutboxEntry entry) => Of("sent", entry);

    /// <summary>Refused, or not sent within its time of use.</summary>
    public static JournalEntry Missed(OutboxEntry entry) => Of("missed", entry);

    private static JournalEntry Of(string kind, OutboxEntry entry) => new(
        entry.Settled!.Value, kind, entry.GardenId, Reason: entry.Reason, To: entry.Message.ToAddress, Subject: entry.Message.Subject, Jobs: entry.JobIds, Key: entry.Key);
}

/// <summary>Tells whoever listens what happens, in order. The log of the service and of a rehearsal hang on it.</summary>
public sealed class Journal
{
    public event Action<JournalEntry>? Written;

    public void Write(JournalEntry entry) => Written?.Invoke(entry);
}
