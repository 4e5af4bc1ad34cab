using System.Globalization;
using StormClock.Core.Tests;
using StormClock.Core.Units;

namespace StormClock.Service.Tests.Replays;

/// <summary>
/// Places on land that had 34 kt as later analysed, after the first advisory that is there: named towns and the centres of population of US
/// counties, so many of each in even steps from the first that had it to the last.
/// </summary>
internal static class ReplayPlaces
{
    public static IReadOnlyList<(string Name, GeoPoint At)> Of(AnalysedStorm storm, Instant firstIssue, int most)
    {
        var towns = Struck(storm, firstIssue, Rows("pws_location_coordinates_approx.csv").Where(cells => !cells[3].StartsWith("exact", StringComparison.Ordinal)));
        var counties = Struck(storm, firstIssue, Rows("us_county_population_centroids_east.csv"));
        var ofTowns = Math.Min(towns.Count, Math.Max(most - (most / 2), most - counties.Count));
        return [.. Spread(towns, ofTowns), .. Spread(counties, most - ofTowns)];
    }

    private static List<(string Name, GeoPoint At)> Struck(AnalysedStorm storm, Instant firstIssue, IEnumerable<string[]> rows) =>
        [.. rows
            .Select(cells => (Name: cells[0], At: new GeoPoint(Number(cells[1]), Number(cells[2]))))
            .Select(place => (place.Name, place.At, First: storm.First(place.At, Wind.GaleKt, Instant.MinValue)))
            .Where(place => place.First > firstIssue)
            .OrderBy(place => place.First).ThenBy(place => place.Name, StringComparer.Ordinal)
            .Select(place => (place.Name, place.At))];

    private static IEnumerable<(string Name, GeoPoint At)> Spread(List<(string Name, GeoPoint At)> places, int most)
    {
        var count = Math.Min(most, places.Count);
        return Enumerable.Range(0, count).Select(i => places[(int)((i + 0.5) / count * places.Count)]);
    }

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(Shared.Folder("geo"), file)).Skip(1).Select(line => line.Split(','));

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
