using StormClock.Core.Stages;
using StormClock.Service.Desk;

namespace StormClock.Service.Rehearsal;

/// <summary>One event in the JSON of <c>rehearse</c> (product.md 4): keys may be added, never renamed.</summary>
internal sealed record RehearsalEvent(
    Instant At, string Kind, string? Garden, Stage? Stage, string? Reason, string? To, string? Subject, IReadOnlyList<string> Jobs, string? Key)
{
    public static RehearsalEvent Of(JournalEntry entry) =>
        new(entry.At, entry.Kind, entry.Garden, entry.Stage, entry.Reason, entry.To, entry.Subject, entry.Jobs ?? [], entry.Key);
}
