namespace StormClock.Core.Units;

/// <summary>Comparing times of which either may not be known.</summary>
public static class Moments
{
    /// <summary>The earlier of the two known; the one that is known; null when neither is.</summary>
    public static Instant? Sooner(Instant? a, Instant? b) => a is { } x && b is { } y ? Instant.Min(x, y) : a ?? b;

    /// <summary>The later of the two known; the one that is known; null when neither is.</summary>
    public static Instant? Later(Instant? a, Instant? b) => a is { } x && b is { } y ? Instant.Max(x, y) : a ?? b;
}
