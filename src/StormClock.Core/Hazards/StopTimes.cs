namespace StormClock.Core.Hazards;

/// <summary>
/// When one class of work stops at one site, over the members in which it does: the first crossing of its own limits or of
/// 34 kt marine, or a time set by an order, whichever is sooner.
/// </summary>
public sealed class StopTimes
{
    private readonly Instant[] stops;

    /// <param name="stops">One instant for each member in which the wind comes; any order.</param>
    /// <param name="notAfter">A leave-by time that holds for certain.</param>
    public StopTimes(IEnumerable<Instant> stops, Instant? notAfter = null)
    {
        this.stops = [.. stops.Select(stop => notAfter is { } cap && cap < stop ? cap : stop).Order()];
        if (this.stops.Length == 0 && notAfter is { } only) this.stops = [only];
    }

    /// <summary>Earliest reasonable stop (10 %): nothing of the class is planned after it. Null when it never comes.</summary>
    public Instant? Earliest => At(0.10);

    /// <summary>Most likely stop (50 %).</summary>
    public Instant? Likely => At(0.50);

    /// <summary>Share of members in which work can still go on until <paramref name="end"/>.</summary>
    public double ChanceOpenUntil(Instant end) =>
        stops.Length == 0 ? 1 : (double)stops.Count(stop => stop >= end) / stops.Length;

    private Instant? At(double share) =>
        stops.Length == 0 ? null : stops[Math.Min(stops.Length - 1, (int)(share * stops.Length))];
}
