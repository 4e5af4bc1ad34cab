using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Hazards;
using StormClock.Skill.Score;

namespace StormClock.Skill.Refit;

/// <summary>Every Atlantic forecast at hand, once: the texts first, then those that stand in the scored cases.</summary>
public static class IssuedForecasts
{
    /// <summary>By storm id, e.g. <c>AL092022</c>, and synoptic time; in order.</summary>
    public static IReadOnlyList<(string Storm, ForecastTrack Track)> ReadAll() =>
        [.. Texts().Concat(Cases())
            .Where(advisory => advisory.StormId.StartsWith("AL", StringComparison.OrdinalIgnoreCase))
            .Select(advisory => (Storm: Key(advisory.StormId), Track: ForecastTrack.Of(advisory)))
            .DistinctBy(forecast => (forecast.Storm, forecast.Track.Origin))
            .OrderBy(forecast => forecast.Storm, StringComparer.Ordinal).ThenBy(forecast => forecast.Track.Origin)];

    /// <summary>Basin, number and year, whatever follows them and in whatever case.</summary>
    public static string Key(string stormId) => stormId[..8].ToUpperInvariant();

    private static IEnumerable<CycloneAdvisory> Texts() =>
        Directory.EnumerateFiles(SharedData.Need("nhc-tcm"), "*.txt", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .Select(path => ForecastAdvisoryReader.Read(File.ReadAllBytes(path)).Value)
            .OfType<CycloneAdvisory>();

    private static IEnumerable<CycloneAdvisory> Cases() =>
        ScoredSet.All.SelectMany(set => ClockCase.Read(set.CasesPath)).Select(one => one.Advisory);
}
