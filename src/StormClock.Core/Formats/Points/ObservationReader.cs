using System.Text.Json;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.Json;

namespace StormClock.Core.Formats.Points;

/// <summary>Reads what stations measured: one observation, or a list of them, of the US weather service in JSON.</summary>
internal static class ObservationReader
{
    /// <summary>Entries looked at; a list goes back some days at an observation every few minutes.</summary>
    private const int MostEntries = 5000;

    /// <summary>Observations kept of a list, the newest: what was measured days ago says nothing of now.</summary>
    private const int MostKept = 24;

    /// <summary>Marks of values that failed the office's checks: rejected, bad by hand, questioned (M); others are taken.</summary>
    private static readonly string[] FailedMarks = ["X", "B", "Q"];

    /// <summary>
    /// A list may hold entries without any value, which are left out; two of one moment are one, with the larger wind. Refused only
    /// when no entry can be read.
    /// </summary>
    public static ReadResult<IReadOnlyList<Advisory>> Read(JsonElement root)
    {
        var features = root.Child("type").Text() == "Feature" ? [root] : root.Child("features").Items().Take(MostEntries).ToList();
        var faults = new List<ReadFault>();
        var read = features.Select((feature, k) => One(feature, $"features[{k}]", faults)).OfType<Observation>().ToList();
        if (read.Count == 0) return ReadResult.Bad<IReadOnlyList<Advisory>>(faults.Count > 0 ? faults : [new("features", "no observation in the list")]);
        return ReadResult.Good<IReadOnlyList<Advisory>>([.. read.GroupBy(one => one.Id, StringComparer.Ordinal).Select(Merged).OrderByDescending(one => one.MeasuredAt).Take(MostKept)]);
    }

    private static Observation? One(JsonElement feature, string key, List<ReadFault> faults)
    {
        var properties = feature.Child("properties");
        var station = (properties.Child("stationId") ?? properties.Child("station")).Text()?.Split('/')[^1];
        if (string.IsNullOrWhiteSpace(station)) faults.Add(new(key + "/properties/station", "is missing; an observation needs its station"));
        else if (CapTime.Parse(properties.Child("timestamp").Text() ?? "") is not { } at) faults.Add(new(key + "/properties/timestamp", "is no time with an offset"));
        else
        {
            var before = faults.Count;
            var wind = Measured(properties.Child("windSpeed"), key + "/properties/windSpeed", faults);
            var gust = Measured(properties.Child("windGust"), key + "/properties/windGust", faults);
            return faults.Count == before ? new Observation(station, GeoJsonPoint.Of(feature.Child("geometry")), at, wind, gust) : null;
        }

        return null;
    }

    private static double? Measured(JsonElement? written, string key, List<ReadFault> faults)
    {
        var mark = written.Child("qualityControl").Text()?.Split(':')[^1];
        return FailedMarks.Contains(mark) ? null : Quantity.SpeedOf(written, key, faults);
    }

    private static Observation Merged(IEnumerable<Observation> same) =>
        same.First() with { WindMps = same.Max(one => one.WindMps), GustMps = same.Max(one => one.GustMps) };
}
