using System.Globalization;
using System.IO.Compression;
using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Skill.Score;

/// <summary>
/// Reads the scored cases in ../shared/data/clock-cases. Lines: <c>A storm number synoptic points</c>; <c>P lead lat lon wind</c> and
/// twelve radii (34, 50, 64 kt by quarter; −1 = none given); <c>L name lat lon</c> and, for 34, 50 and 64 kt, the official chances
/// by 12, 24, 36, 48, 72, 96, 120 h (%), then arrival and end of the outcome at 0.85 and at the whole of the radii (−1 = never).
/// </summary>
public sealed record ClockCase(CycloneAdvisory Advisory, IReadOnlyList<ClockPlace> Places)
{
    public static IEnumerable<ClockCase> Read(string path)
    {
        using var file = File.OpenRead(path);
        using var reader = new StreamReader(new GZipStream(file, CompressionMode.Decompress));
        string[]? head = null;
        var points = new List<string[]>();
        var places = new List<ClockPlace>();
        while (reader.ReadLine() is { } line)
        {
            var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0) continue;
            if (words[0] == "A")
            {
                if (head is not null) yield return new(AdvisoryOf(head, points), places);
                (head, points, places) = (words, [], []);
            }
            else if (words[0] == "P") points.Add(words);
            else if (words[0] == "L") places.Add(ClockPlace.Of(words));
        }

        if (head is not null) yield return new(AdvisoryOf(head, points), places);
    }

    public static ClockCase Find(string path, string storm, string number) =>
        Read(path).First(found => found.Advisory.StormId.StartsWith(storm, StringComparison.OrdinalIgnoreCase) && found.Advisory.Number == number);

    /// <summary>The fitted error statistics of a file in the same folder, by the labels at the start of its lines.</summary>
    public static ErrorStatistics Statistics(string path)
    {
        var rows = File.ReadLines(path)
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(words => words.Length > 1)
            .ToDictionary(words => words[0], words => words[1..].Select(Number).ToArray());
        return new(
            rows["al_sd"], rows["al_mean"], rows["cr_sd"], rows["v_sd"], rows["v_mean"], rows["r_sd"],
            rows["rho_al"], rows["rho_cr"], rows["rho_di"], rows["rho_lr"]);
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static CycloneAdvisory AdvisoryOf(string[] head, List<string[]> points)
    {
        var hour = head[3];
        var synoptic = Instant.FromUtc(
            int.Parse(hour[..4], CultureInfo.InvariantCulture), int.Parse(hour[4..6], CultureInfo.InvariantCulture),
            int.Parse(hour[6..8], CultureInfo.InvariantCulture), int.Parse(hour[8..10], CultureInfo.InvariantCulture), 0);
        var read = points.Select(words => PointOf(synoptic, words)).ToArray();
        return new(head[1], head[1], head[2], read[0].Valid, synoptic, read[0], null, read[1..]);
    }

    private static CyclonePoint PointOf(Instant synoptic, string[] words)
    {
        var n = words[1..].Select(Number).ToArray();
        return new(
            synoptic + Duration.FromHours(n[0]), new(n[1], n[2]), n[3], null, Radii(n, 4), Radii(n, 8), Radii(n, 12));
    }

    private static QuadrantRadii? Radii(double[] n, int at) => n[at] < 0 ? null : new(n[at], n[at + 1], n[at + 2], n[at + 3]);
}

/// <param name="Outcomes">For 34, 50 and 64 kt.</param>
public sealed record ClockPlace(string Name, GeoPoint At, IReadOnlyList<ClockOutcome> Outcomes)
{
    public static ClockPlace Of(string[] words) => new(
        words[1], new(ClockCase.Number(words[2]), ClockCase.Number(words[3])), words[4..7].Select(ClockOutcome.Of).ToArray());
}

/// <param name="OfficialPercent">By 12, 24, 36, 48, 72, 96 and 120 h.</param>
/// <param name="Arrival">Hours after the synoptic time by 0.85 of the observed radii; null when it never came.</param>
public sealed record ClockOutcome(double[] OfficialPercent, double? Arrival, double? End, double? ArrivalOfWholeRadii)
{
    public static ClockOutcome Of(string text)
    {
        var n = text.Split(',').Select(ClockCase.Number).ToArray();
        return new(n[..7], n[7] < 0 ? null : n[7], n[8] < 0 ? null : n[8], n[9] < 0 ? null : n[9]);
    }
}
