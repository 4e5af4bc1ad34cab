namespace StormClock.Core.Hazards;

/// <summary>
/// The earliest time at which wind should reasonably be expected, from the spread of the members; the same for the clock, the stages and
/// the hours at which work stops.
/// </summary>
internal static class CarefulTimes
{
    /// <summary>One arrival in ten is sooner.</summary>
    public const double TenthShare = 0.10;

    // No arrival is known to better than this share of the time left (C): a storm whose whole forecast is slow errs everywhere at
    // once. It moves the earliest time of fast storms, whose members lie close together.
    private const double LeastSpreadOfLead = 0.15;

    // The spread of a single member, which shows none (C).
    private static readonly Duration LoneLeastSpread = Duration.FromHours(3);

    /// <summary>The time before which one arrival in ten lies or, if that is sooner, the likely one less 15 % of the time left.</summary>
    public static Instant Earliest(Instant tenth, Instant likely, Instant now) => Instant.Min(tenth, likely - LeastSpread(likely, now));

    /// <summary>Stand-in, before and after, for the spread that a single member cannot show: 15 % of the time left, at least 3 h.</summary>
    public static Duration LoneSpread(Instant arrival, Instant now) => Duration.Max(LoneLeastSpread, LeastSpread(arrival, now));

    private static Duration LeastSpread(Instant likely, Instant now) => (likely - now) * LeastSpreadOfLead;
}
