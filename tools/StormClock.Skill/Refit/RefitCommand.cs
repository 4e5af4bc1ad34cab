using System.Globalization;
using StormClock.Core.Hazards;

namespace StormClock.Skill.Refit;

/// <summary>Fits the Atlantic error statistics anew and writes the product's data file.</summary>
public static class RefitCommand
{
    private const string Track = "hurdat2/hurdat2_atlantic_2004_2025.csv";

    // Chosen, not fitted (C): the spread along and across is used whole; strength and size as before or nearly, because
    // part of what is measured there is the roughness of the analysis.
    private const double TrackScale = 1.0;
    private const double WindScale = 0.9;
    private const double SizeScale = 0.8;

    public static int Run(TextWriter output)
    {
        var errors = Errors();
        var storms = errors.Select(error => error.Storm).Distinct().ToArray();
        var (form, statistics) = Fit(errors);
        var left = storms.Select(storm => StatisticsFit.Likeliest([.. errors.Where(error => error.Storm != storm)])).ToArray();
        output.WriteLine(Text($"{errors.Count} errors of {errors.DistinctBy(e => (e.Storm, e.Origin)).Count()} forecasts of {storms.Length} storms"));
        output.WriteLine(Text($"time weighs as much as place at {form.EvenSpeedKt} kt, with one storm left out {left.Min(f => f.EvenSpeedKt)} to {left.Max(f => f.EvenSpeedKt)} kt"));
        output.WriteLine(Text($"size spread falls with the power {form.SizeCalm} of wind ({left.Min(f => f.SizeCalm)} to {left.Max(f => f.SizeCalm)})"));
        output.WriteLine(Text($"share of the strength spread that grows with wind {form.WindGrowth} ({left.Min(f => f.WindGrowth)} to {left.Max(f => f.WindGrowth)})"));

        var root = SharedData.Repository() ?? throw new DirectoryNotFoundException("Not inside the repository.");
        var path = Path.Combine(root, "src", "StormClock.Core", "Hazards", "Data", "errors-atlantic.txt");
        File.WriteAllText(path, ErrorStatisticsText.Write(statistics, Sources(errors, storms)));
        output.WriteLine("written: src/StormClock.Core/Hazards/Data/errors-atlantic.txt");
        return 0;
    }

    /// <summary>Statistics for any storm that have not seen it.</summary>
    public static Func<string, ErrorStatistics> LeavingOut()
    {
        var errors = Errors();
        var whole = Fit(errors).Statistics;
        var without = errors.Select(error => error.Storm).Distinct()
            .ToDictionary(storm => storm, storm => Fit([.. errors.Where(error => error.Storm != storm)]).Statistics);
        return storm => without.GetValueOrDefault(IssuedForecasts.Key(storm), whole);
    }

    private static IReadOnlyList<ForecastError> Errors()
    {
        var truth = BestTrack.ReadAll(SharedData.Need(Track));
        return [.. IssuedForecasts.ReadAll()
            .Where(forecast => truth.ContainsKey(forecast.Storm))
            .SelectMany(forecast => ForecastError.Of(forecast.Storm, forecast.Track, truth[forecast.Storm]))];
    }

    private static (StatisticsFit Form, ErrorStatistics Statistics) Fit(IReadOnlyList<ForecastError> errors)
    {
        var form = StatisticsFit.Likeliest(errors);
        return (form, form.Statistics(errors) with { TrackScale = TrackScale, WindScale = WindScale, SizeScale = SizeScale });
    }

    private static IEnumerable<string> Sources(IReadOnlyList<ForecastError> errors, string[] storms)
    {
        var years = storms.Select(storm => storm[4..8]).Order(StringComparer.Ordinal).ToArray();
        yield return "Errors of official Atlantic forecasts. Written by: dotnet run -c Release --project tools/StormClock.Skill -- refit";
        yield return Text($"Forecasts: {errors.DistinctBy(e => (e.Storm, e.Origin)).Count()} of {storms.Length} storms, {years[0]} to {years[^1]}, from nhc-tcm and clock-cases. Outcomes: HURDAT2. All stages. (D)");
        yield return "n by lead: " + string.Join(", ", ErrorStatistics.LeadHours.Select(lead => Text($"{lead} h {errors.Count(e => e.LeadHours == lead)}"))) + ".";
        yield return "60 h is taken between 48 and 72 h: it was not forecast before 2020. Size beyond 72 h is assumed, with its rho. (C)";
        yield return "Along the track: at usual-speed-kt; spread by the root of place squared plus time times speed squared, equal at even-speed-kt;";
        yield return "bias in proportion to speed. Size and strength: at usual-wind-kt. The scales are chosen. (C)";
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
