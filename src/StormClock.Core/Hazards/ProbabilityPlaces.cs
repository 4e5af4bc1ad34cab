using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Where the places are that official wind speed probabilities name without a position: approximate, off by up to some 13 nautical
/// miles. Sources and marks stand in the data file <c>Data/probability-places.csv</c>.
/// </summary>
public static partial class ProbabilityPlaces
{
    private static readonly FrozenDictionary<string, GeoPoint> Known = Read();

    /// <param name="location">As written in the table.</param>
    /// <returns>Null when the place is not known.</returns>
    public static GeoPoint? Find(string location)
    {
        if (Known.TryGetValue(location, out var at)) return at;
        return InName().Match(location) is { Success: true } written ? PointOf(written) : null;
    }

    /// <summary>"GFMX 290N 850W" is in tenths of a degree, "15N 105W" in whole ones.</summary>
    [GeneratedRegex(@"^(?:[A-Z]{4}\s+)?(?<lat>\d{2,3})N\s+(?<lon>\d{2,4})W$", RegexOptions.CultureInvariant)]
    private static partial Regex InName();

    private static GeoPoint? PointOf(Match written)
    {
        var unit = written.Groups["lat"].Length == 3 ? 0.1 : 1;
        var (lat, lon) = (Number(written.Groups["lat"].Value) * unit, Number(written.Groups["lon"].Value) * unit);
        return lat <= 90 && lon < 180 ? new GeoPoint(lat, -lon) : null;
    }

    private static FrozenDictionary<string, GeoPoint> Read()
    {
        using var stream = typeof(ProbabilityPlaces).Assembly.GetManifestResourceStream("StormClock.Core.Hazards.Data.probability-places.csv")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd()
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(line => line[0] != '#')
            .Skip(1)
            .Select(line => line.Split(','))
            .ToFrozenDictionary(cells => cells[0], cells => new GeoPoint(Number(cells[1]), Number(cells[2])), StringComparer.OrdinalIgnoreCase);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
