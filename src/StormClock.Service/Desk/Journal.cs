using StormClock.Core.Stages;

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
    string? Key = null);

/// <summary>Tells whoever listens what happens, in order. The log of the service and of a rehearsal hang on it.</summary>
public sealed class Journal
{
    public event Action<JournalEntry>? Written;

    public void Write(JournalEntry entry) => Written?.Invoke(entry);
}
