namespace StormClock.Core.Units;

/// <summary>Comparing times of which either may not be known.</summary>
public static class Moments
{
    /// <summary>The earlier of the two known; the one that is known; null when neither is.</summary>
    public static Instant? Sooner(Instant? a, Instant? b) => a is { } x && b is { } y ? Instant.Min(x, y) : a ?? b;

    /// <summary>The later of the two known; the one that is known; null when neither is.</summary>
    public static Instant? Later(Instant? a, Instant? b) => a is { } x && b is { } y ? Instant.Max(x, y) : a ?? b;

    /// <summary>
    /// The quarter of an hour at or before it, as times to be ahead of are told: a forecast is not good to the minute. Quarters of UTC; zones off
    /// the quarter do not exist today.
    /// </summary>
    public static Instant QuarterBefore(Instant at)
    {
        const long Quarter = 15 * NodaConstants.TicksPerMinute;
        var ticks = at.ToUnixTimeTicks();
        return Instant.FromUnixTimeTicks(ticks - (((ticks % Quarter) + Quarter) % Quarter));
    }
}
