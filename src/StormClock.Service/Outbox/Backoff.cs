using StormClock.Service.Delivery;

namespace StormClock.Service.Outbox;

/// <summary>How long to wait between tries.</summary>
public static class Backoff
{
    private static readonly int[] Minutes = [1, 2, 5, 10, 20, 30];

    /// <summary>The other side's own word is honoured, but a word of "at once" must not become a busy loop.</summary>
    private static readonly Duration Shortest = Duration.FromMinutes(1);

    /// <param name="attempts">Tries made so far, at least 1.</param>
    /// <param name="told"><see cref="DeliveryOutcome.After"/>: what the other side asked for, where it did.</param>
    public static Duration After(int attempts, Duration? told = null) => told is { } asked
        ? Duration.Max(asked, Shortest)
        : Duration.FromMinutes(Minutes[Math.Clamp(attempts, 1, Minutes.Length) - 1]);
}
