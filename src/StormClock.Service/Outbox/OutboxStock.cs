namespace StormClock.Service.Outbox;

/// <summary>The outbox of one garden as reconciling sees it.</summary>
/// <param name="Open">What may still change, in order of writing.</param>
/// <param name="Final">By key: what was sent, and when, or refused for good (null). Nothing that is wanted can change it.</param>
public sealed record OutboxStock(IReadOnlyList<OutboxEntry> Open, IReadOnlyDictionary<string, Instant?> Final)
{
    /// <summary>By key of a reminder: when it was sent.</summary>
    public IReadOnlyDictionary<string, Instant> SentAt { get; } =
        Final.Where(entry => entry.Value is not null).ToDictionary(entry => entry.Key, entry => entry.Value!.Value);

    public static bool IsFinal(OutboxState state) => state is OutboxState.Sent or OutboxState.Refused;
}
