using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Plan;

/// <summary>Hours at one site in which the forecast lets less be done than the light does, each list in any order.</summary>
/// <param name="Wet">Rain: no ladder and no saw (trade.md 1.5).</param>
/// <param name="Thunder">Thunder, and the half hour after it: nobody works outside (trade.md 1.5).</param>
/// <param name="Hot">So hot that a quarter of each hour is rest (trade.md 1.5).</param>
public sealed record WorkWeather(IReadOnlyList<Interval> Wet, IReadOnlyList<Interval> Thunder, IReadOnlyList<Interval> Hot)
{
    public static WorkWeather Fair { get; } = new([], [], []);

    /// <summary>Rain and thunder are counted on where they are more likely than not (C).</summary>
    private const double Likely = 0.5;

    /// <summary>Where no chance is given: less in an hour is counted as dry (0.01 in, the least that US gauges tell, M).</summary>
    private const double DryMmPerHour = 0.254;

    private static readonly Duration AfterThunder = Duration.FromMinutes(30);
    private static readonly Duration NotedRain = Duration.FromHours(24);

    /// <summary>What the standing point forecasts and notes say of a site.</summary>
    public static WorkWeather Of(Site site, IReadOnlyList<PointForecast> forecasts, IReadOnlyList<RainNote> notes)
    {
        var periods = forecasts.Where(forecast => GreatCircle.DistanceNmi(forecast.At, site.At) <= PointWind.WithinNmi).SelectMany(forecast => forecast.Periods).ToList();
        return new(
            [.. periods.Where(IsWet).Select(period => new Interval(period.From, period.To)), .. notes.Select(note => new Interval(note.From, note.From + NotedRain))],
            [.. periods.Where(period => period.Thunder > Likely).Select(period => new Interval(period.From, period.To + AfterThunder))],
            [.. periods.Where(period => period.HeatIndexC >= HeatIndex.DangerC).Select(period => new Interval(period.From, period.To))]);
    }

    /// <summary>When a class of work does not go on though it is light.</summary>
    public IEnumerable<Interval> Closed(WorkClass workClass) => workClass is WorkClass.Ladder or WorkClass.Saw ? Wet.Concat(Thunder) : Thunder;

    private static bool IsWet(ForecastPeriod period) =>
        period.RainChance is { } chance ? chance > Likely : period.RainMm / (period.To - period.From).TotalHours >= DryMmPerHour;
}
