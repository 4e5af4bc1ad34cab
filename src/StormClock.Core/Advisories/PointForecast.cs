using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>An office's forecast for one point, period by period: wind that is no cyclone's too, and rain.</summary>
/// <param name="Source">Office or service, as a person would call it.</param>
/// <param name="At">The point, or the middle of its grid box.</param>
/// <param name="Periods">In order of time; they may leave gaps.</param>
public sealed record PointForecast(string Source, GeoPoint At, Instant IssuedAt, IReadOnlyList<ForecastPeriod> Periods) : Advisory
{
    public override string Id => FormattableString.Invariant($"point/{Source}/{At.LatDeg:0.000},{At.LonDeg:0.000}/{IssuedAt:uuuu-MM-dd'T'HH:mm:ss'Z'}");

    public override Instant Issued => IssuedAt;

    public override string Title => $"point forecast by {Source}";
}

/// <summary>What is forecast between two instants; null where the source says nothing.</summary>
/// <param name="WindMps">Sustained, 10 m, the upper end of a range.</param>
/// <param name="GustMps">Peak gust, 10 m.</param>
/// <param name="RainMm">Depth over the whole period.</param>
/// <param name="Thunder">Chance of thunder, 0 to 1.</param>
public sealed record ForecastPeriod(Instant From, Instant To, double? WindMps, double? GustMps, double? RainMm, double? Thunder = null)
{
    /// <summary>Chance of rain, 0 to 1.</summary>
    public double? RainChance { get; init; }

    /// <summary>How hot it feels in the shade, °C.</summary>
    public double? HeatIndexC { get; init; }
}
