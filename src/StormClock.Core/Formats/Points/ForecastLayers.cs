using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Points;

/// <summary>One statement of a forecast: a value that holds for a stretch of time.</summary>
internal readonly record struct Statement(Stretch When, double Value);

/// <summary>
/// Lays what a forecast says of wind, gust, rain, thunder and heat over each other, each with stretches of its own, and cuts the time
/// where any of them changes. Where two statements of one kind cover the same time (a list merged twice, a period given again)
/// the larger counts: careful, and the same in whichever order they come. Rain is shared out over the parts of its stretch.
/// </summary>
internal sealed class ForecastLayers
{
    public List<Statement> WindMps { get; } = [];

    public List<Statement> GustMps { get; } = [];

    /// <summary>Depth over the stretch.</summary>
    public List<Statement> RainMm { get; } = [];

    public List<Statement> RainChance { get; } = [];

    public List<Statement> Thunder { get; } = [];

    public List<Statement> HeatIndexC { get; } = [];

    /// <summary>Parts in order of time without those of which nothing is said.</summary>
    public IReadOnlyList<ForecastPeriod> Periods()
    {
        var cuts = Cuts();
        var wind = Largest(WindMps, cuts, one => one.Value);
        var gust = Largest(GustMps, cuts, one => one.Value);
        var rainPerHour = Largest(RainMm, cuts, one => one.Value / (one.When.To - one.When.From).TotalHours);
        var rainChance = Largest(RainChance, cuts, one => one.Value);
        var thunder = Largest(Thunder, cuts, one => one.Value);
        var heat = Largest(HeatIndexC, cuts, one => one.Value);
        var periods = new List<ForecastPeriod>();
        for (var k = 0; k + 1 < cuts.Length; k++)
        {
            if (wind[k] is null && gust[k] is null && rainPerHour[k] is null && rainChance[k] is null && thunder[k] is null && heat[k] is null) continue;
            periods.Add(new(cuts[k], cuts[k + 1], wind[k], gust[k], rainPerHour[k] * (cuts[k + 1] - cuts[k]).TotalHours, thunder[k])
            {
                RainChance = rainChance[k],
                HeatIndexC = heat[k],
            });
        }

        return periods;
    }

    private Instant[] Cuts() =>
        [.. new[] { WindMps, GustMps, RainMm, RainChance, Thunder, HeatIndexC }.SelectMany(layer => layer).SelectMany(one => new[] { one.When.From, one.When.To }).Distinct().Order()];

    /// <summary>The largest value in each part between two cuts.</summary>
    private static double?[] Largest(List<Statement> statements, Instant[] cuts, Func<Statement, double> valueOf)
    {
        var largest = new double?[cuts.Length];
        foreach (var one in statements)
        {
            var value = valueOf(one);
            for (var k = Array.BinarySearch(cuts, one.When.From); cuts[k] < one.When.To; k++) largest[k] = Math.Max(largest[k] ?? value, value);
        }

        return largest;
    }
}
