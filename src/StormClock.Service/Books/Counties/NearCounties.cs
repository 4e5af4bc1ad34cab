using System.Globalization;
using StormClock.Core.Units;

namespace StormClock.Service.Books.Counties;

/// <summary>The codes by which alerts name a county.</summary>
/// <param name="Ugc">Such as FLC133.</param>
/// <param name="Same">Such as 012133.</param>
/// <param name="Nmi">From the place asked to the middle of the county's people, nautical miles.</param>
internal sealed record NearCounty(string Ugc, string Same, double Nmi);

/// <summary>
/// Counties that may be the one of a place, by the middle of their people alone: where the border runs is not known here, so that
/// the nearest is a guess that somebody must check.
/// </summary>
internal static class NearCounties
{
    private const string Resource = "us-counties.txt";
    private const int Most = 3;

    /// <summary>A place farther from all of them is in none (C): the widest eastern counties reach some 40 n mi from their middle.</summary>
    private const double FarthestNmi = 40;

    /// <summary>Letters of the states by the number that begins the county's (FIPS 5-2, M).</summary>
    private static readonly Dictionary<string, string> States = new()
    {
        ["01"] = "AL", ["05"] = "AR", ["09"] = "CT", ["10"] = "DE", ["11"] = "DC", ["12"] = "FL", ["13"] = "GA", ["17"] = "IL", ["18"] = "IN", ["19"] = "IA",
        ["20"] = "KS", ["21"] = "KY", ["22"] = "LA", ["23"] = "ME", ["24"] = "MD", ["25"] = "MA", ["26"] = "MI", ["28"] = "MS", ["29"] = "MO", ["33"] = "NH",
        ["34"] = "NJ", ["36"] = "NY", ["37"] = "NC", ["39"] = "OH", ["40"] = "OK", ["42"] = "PA", ["44"] = "RI", ["45"] = "SC", ["47"] = "TN", ["48"] = "TX",
        ["50"] = "VT", ["51"] = "VA", ["54"] = "WV", ["55"] = "WI",
    };

    private static readonly Lazy<IReadOnlyList<(string Fips, GeoPoint At)>> All = new(Read);

    /// <summary>The nearest first; none where the table holds nothing near.</summary>
    public static IReadOnlyList<NearCounty> Of(GeoPoint place) =>
    [
        .. All.Value.Select(county => (county.Fips, Nmi: GreatCircle.DistanceNmi(place, county.At)))
            .Where(county => county.Nmi <= FarthestNmi)
            .OrderBy(county => county.Nmi)
            .Take(Most)
            .Select(county => new NearCounty($"{States[county.Fips[..2]]}C{county.Fips[2..]}", $"0{county.Fips}", county.Nmi)),
    ];

    private static List<(string, GeoPoint)> Read()
    {
        using var text = new StreamReader(typeof(NearCounties).Assembly.GetManifestResourceStream(Resource)!);
        var counties = new List<(string, GeoPoint)>();
        while (text.ReadLine() is { } line)
        {
            if (line.StartsWith('#')) continue;
            var parts = line.Split(' ');
            counties.Add((parts[0], new(Degrees(parts[1]), Degrees(parts[2]))));
        }

        return counties;
    }

    private static double Degrees(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
