using System.Collections.Concurrent;
using StormClock.Core.Hazards;

namespace StormClock.Skill.Score;

/// <summary>Runs the outlook over a set of cases.</summary>
public static class Scorer
{
    public static int[] Leads { get; } = [12, 24, 36, 48, 72, 96, 120];

    public static double[] Thresholds { get; } = [34, 50, 64];

    /// <summary>One row for each advisory, place and wind that counts, in the order of the file.</summary>
    /// <param name="errors">The statistics to use for a storm, by its id.</param>
    /// <param name="everyNthPlace">1 for all; more to look quickly.</param>
    public static IReadOnlyList<Verified> Run(string path, Func<string, ErrorStatistics> errors, Draws draws, int everyNthPlace = 1)
    {
        var rows = new ConcurrentDictionary<int, List<Verified>>();
        var cases = ClockCase.Read(path).ToArray();
        Parallel.For(0, cases.Length, i => rows[i] = [.. OfOne(cases[i], errors(cases[i].Advisory.StormId), draws, everyNthPlace, i)]);
        return [.. rows.OrderBy(pair => pair.Key).SelectMany(pair => pair.Value)];
    }

    /// <summary>The first of the product's members, so that a smaller run is a part of the larger.</summary>
    public static Draws FirstMembers(int count) =>
        count >= Draws.Default.Members
            ? Draws.Default
            : new([.. Enumerable.Range(0, count).SelectMany(m => Draws.Default.Of(m).ToArray())]);

    private static IEnumerable<Verified> OfOne(ClockCase one, ErrorStatistics errors, Draws draws, int everyNthPlace, int from)
    {
        var track = ForecastTrack.Of(one.Advisory);
        for (var p = from % everyNthPlace; p < one.Places.Count; p += everyNthPlace)
        {
            var place = one.Places[p];
            var members = Ensemble.Run(track, place.At, Thresholds, errors, draws);
            for (var t = 0; t < Thresholds.Length; t++)
            {
                if (Verified.Of(one, place, members, Thresholds[t], place.Outcomes[t]) is { } row) yield return row;
            }
        }
    }
}
