using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Many ways in which a forecast may come out, as its office's past errors suggest, seen from one place (science.md 3.3 to 3.5).
/// The same input gives the same output to the last bit, on any number of threads.
/// </summary>
public static class Ensemble
{
    /// <summary>Members are looked at every quarter of an hour; passes shorter than that are missed.</summary>
    public const double StepHours = 0.25;

    /// <summary>Every member's arrival, end and peak at the place.</summary>
    /// <param name="thresholdsKt">Sustained marine wind, knots, ascending; below 34 kt too.</param>
    public static WindMembers Run(
        ForecastTrack track, GeoPoint place, IReadOnlyList<double> thresholdsKt, ErrorStatistics errors, Draws draws)
    {
        var sampler = new MemberSampler(track, place, errors);
        var path = new MemberPath(track, place);
        var winds = thresholdsKt.Select(wind => new MemberWind(track, wind)).ToArray();
        var peak = new MemberPeak(track, place);
        var arrivals = Table(thresholdsKt.Count, draws.Members);
        var ends = Table(thresholdsKt.Count, draws.Members);
        var peaks = new float[draws.Members];

        for (var m = 0; m < draws.Members; m++)
        {
            sampler.Fill(path, draws.Of(m));
            path.Measure();
            var reached = 0.0;
            for (var t = 0; t < winds.Length; t++)
            {
                // A wind that a weaker one does not come before cannot come either.
                var arrival = t > 0 && reached < thresholdsKt[t - 1] ? null : winds[t].First(path);
                arrivals[t][m] = arrival is { } first ? (float)(first * StepHours) : float.NaN;
                ends[t][m] = arrival is null ? float.NaN : (float)(winds[t].LastStep(path)!.Value * StepHours);
                if (arrival is not null) reached = thresholdsKt[t];
            }

            peaks[m] = (float)Math.Max(reached, peak.WindKt(path, around: reached > 0));
        }

        return new(track.Origin, thresholdsKt, arrivals, ends, peaks, track.HorizonHours);
    }

    /// <summary>The forecast as written, as a single member, through the same steps.</summary>
    public static WindMembers Deterministic(ForecastTrack track, GeoPoint place, IReadOnlyList<double> thresholdsKt) =>
        Run(track, place, thresholdsKt, ErrorStatistics.None, Draws.Still);

    private static float[][] Table(int thresholds, int members)
    {
        var table = new float[thresholds][];
        for (var t = 0; t < thresholds; t++) table[t] = new float[members];
        return table;
    }
}
