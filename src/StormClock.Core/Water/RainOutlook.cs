using StormClock.Core.Advisories;

namespace StormClock.Core.Water;

/// <summary>How much rain to be ready for at a place, by point forecasts and notes (science.md 4.3 and 6).</summary>
/// <param name="DayMm">Most in any 24 h ahead at the 80 % value, mm.</param>
/// <param name="HourMm">Hardest hour to plan for, mm.</param>
/// <param name="From">When that day begins; null when there is no rain.</param>
public sealed record RainOutlook(double DayMm, double HourMm, Instant? From, string Source, Instant? Issued)
{
    public static RainOutlook None { get; } = new(0, 0, null, "", null);

    // Total of a day is lognormal, σ 0.5 to 24 h and 0.7 beyond (C); 80 % lies 0.8416 σ above the middle.
    private const double Normal80 = 0.8416;
    private const double SoonSigma = 0.5;
    private const double LaterSigma = 0.7;
    private static readonly Duration Day = Duration.FromHours(24);

    /// <summary>Farther ahead a total says too little (C).</summary>
    private static readonly Duration Reach = Duration.FromHours(72);

    /// <summary>The most that any of them says.</summary>
    public static RainOutlook Of(IEnumerable<PointForecast> forecasts, IEnumerable<RainNote> notes, Instant now) =>
        forecasts.Select(forecast => Of(forecast, now))
            .Concat(notes.Select(note => new RainOutlook(note.DayMm, note.HourMm ?? RainClass.PeakHourMm(0, 0, note.DayMm), note.From, note.Title, note.Made)))
            .DefaultIfEmpty(None)
            .MaxBy(rain => (rain.DayMm, rain.HourMm))!;

    /// <summary>Every 24 h that begin with one of the forecast's periods.</summary>
    private static RainOutlook Of(PointForecast forecast, Instant now)
    {
        var wet = forecast.Periods.Where(period => period.RainMm > 0 && period.To > now && period.From < now + Reach).ToList();
        if (wet.Count == 0) return None;
        var (mm, from) = wet.Select(period => Instant.Max(period.From, now)).Select(start => (Mm: Careful(forecast, Between(wet, start, start + Day), start), From: start)).MaxBy(day => day.Mm);
        var hour = wet.Max(period => period.RainMm!.Value / Math.Max(1, (period.To - period.From).TotalHours));
        var six = wet.Max(period => Between(wet, period.From, period.From + Duration.FromHours(6)));
        return new(mm, RainClass.PeakHourMm(hour, six, mm), from, forecast.Title, forecast.IssuedAt);
    }

    private static double Careful(PointForecast forecast, double mm, Instant start) =>
        mm * Math.Exp(Normal80 * (start - forecast.IssuedAt <= Day ? SoonSigma : LaterSigma));

    /// <summary>Rain between two instants; evenly within each period.</summary>
    private static double Between(List<ForecastPeriod> wet, Instant from, Instant to) => wet.Sum(period =>
    {
        var share = (Instant.Min(period.To, to) - Instant.Max(period.From, from)) / (period.To - period.From);
        return period.RainMm!.Value * Math.Clamp(share, 0, 1);
    });
}
