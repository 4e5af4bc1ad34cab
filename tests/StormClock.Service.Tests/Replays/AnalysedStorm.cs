using System.Globalization;
using NodaTime.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Tests;
using StormClock.Core.Units;

namespace StormClock.Service.Tests.Replays;

/// <summary>
/// A storm's wind as later analysed: best-track centre, strength and radii by straight lines in time, each quarter as given, radii times
/// 0.85 (farthest to mean reach), read off the radial profile (science.md 2.1). HURDAT2 for the Atlantic; for the one storm of the Pacific the
/// working best track at its last advisory.
/// </summary>
internal sealed class AnalysedStorm
{
    private const double MeanReach = 0.85;

    // A quarter given as zero beside others that are not keeps so much of the mean (science.md 1.2).
    private const double Fill = 0.05;
    private static readonly Duration Step = Duration.FromMinutes(15);

    private readonly IReadOnlyList<Fix> steps;

    private AnalysedStorm(IReadOnlyList<Fix> steps) => this.steps = steps;

    public static AnalysedStorm Of(string stormId)
    {
        var fixes = stormId.StartsWith("AL", StringComparison.Ordinal) ? FromHurdat(stormId) : FromDeck(stormId);
        var steps = new List<Fix>();
        for (var i = 1; i < fixes.Count; i++)
        {
            for (var at = fixes[i - 1].At; at < fixes[i].At; at += Step) steps.Add(Between(fixes[i - 1], fixes[i], at));
        }

        return new(steps);
    }

    /// <summary>The first quarter of an hour, at or after an instant, with at least this marine wind at a place; null when it never came.</summary>
    public Instant? First(GeoPoint place, double marineKt, Instant from)
    {
        foreach (var step in steps)
        {
            if (step.At >= from && step.WindKt(place) >= marineKt) return step.At;
        }

        return null;
    }

    /// <summary>Strongest sustained marine wind that came to a place, knots.</summary>
    public double PeakKt(GeoPoint place) => steps.Max(step => step.WindKt(place));

    private static Fix Between(Fix from, Fix to, Instant at)
    {
        var share = (at - from.At) / (to.At - from.At);
        return new(
            at, new(Mix(from.Centre.LatDeg, to.Centre.LatDeg), Mix(from.Centre.LonDeg, to.Centre.LonDeg)), Mix(from.MaxKt, to.MaxKt),
            Radii(from.Radii34, to.Radii34), Radii(from.Radii50, to.Radii50), Radii(from.Radii64, to.Radii64));

        double Mix(double x, double y) => x + (share * (y - x));

        QuadrantRadii Radii(QuadrantRadii x, QuadrantRadii y) =>
            new(Mix(x.NeNmi, y.NeNmi), Mix(x.SeNmi, y.SeNmi), Mix(x.SwNmi, y.SwNmi), Mix(x.NwNmi, y.NwNmi));
    }

    private static List<Fix> FromHurdat(string stormId)
    {
        return [.. File.ReadLines(Path.Combine(Shared.Folder("hurdat2"), "hurdat2_atlantic_2004_2025.csv"))
            .Where(line => line.StartsWith(stormId + ",", StringComparison.Ordinal))
            .Select(line => line.Split(','))
            .Select(cells => Fix.Of(
                InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'").Parse(cells[2]).Value,
                new(Number(cells[5]), Number(cells[6])), Number(cells[7]), Radii(cells, 9), Radii(cells, 13), Radii(cells, 17)))];
    }

    /// <summary>Lines of an ATCF best track: one for each of 34, 50 and 64 kt, the same moment in each.</summary>
    private static List<Fix> FromDeck(string stormId)
    {
        var file = Path.Combine(Shared.Folder("atcf-bdeck"), $"operational-b{stormId.ToLowerInvariant()}.dat");
        return [.. File.ReadLines(file)
            .Select(line => line.Split(',', StringSplitOptions.TrimEntries))
            .GroupBy(cells => cells[2])
            .Select(moment =>
            {
                var cells = moment.First();
                return Fix.Of(
                    InstantPattern.CreateWithInvariantCulture("uuuuMMddHH").Parse(moment.Key).Value,
                    new(Degrees(cells[6]), Degrees(cells[7])), Number(cells[8]), Of("34"), Of("50"), Of("64"));

                QuadrantRadii Of(string kt) => moment.FirstOrDefault(row => row.Length > 16 && row[11] == kt) is { } row ? Radii(row, 13) : default;
            })];

        static double Degrees(string text) => Number(text[..^1]) / 10 * (text[^1] is 'S' or 'W' ? -1 : 1);
    }

    private static QuadrantRadii Radii(string[] cells, int from) =>
        new(Radius(cells[from]), Radius(cells[from + 1]), Radius(cells[from + 2]), Radius(cells[from + 3]));

    /// <summary>Not analysed is empty or negative.</summary>
    private static double Radius(string cell) => Math.Max(0, Number(cell));

    private static double Number(string cell) => cell.Length == 0 ? 0 : double.Parse(cell, CultureInfo.InvariantCulture);

    private sealed record Fix(Instant At, GeoPoint Centre, double MaxKt, QuadrantRadii Radii34, QuadrantRadii Radii50, QuadrantRadii Radii64)
    {
        /// <summary>A depression has no radii: its outer wind goes by climatology, as in the product.</summary>
        public static Fix Of(Instant at, GeoPoint centre, double maxKt, QuadrantRadii radii34, QuadrantRadii radii50, QuadrantRadii radii64)
        {
            var usual = Climatology.Radius34Nmi(maxKt, centre.LatDeg);
            return new(at, centre, maxKt, radii34.LargestNmi > 0 ? radii34 : new(usual, usual, usual, usual), radii50, radii64);
        }

        public double WindKt(GeoPoint place)
        {
            var (x, y) = new LocalPlane(Centre).Place(place);
            var profile = RadialProfile.Through(Toward(Radii34), Toward(Radii50), Toward(Radii64), MaxKt, Centre.LatDeg);
            return Math.Min(MaxKt, profile.WindKt(Math.Sqrt((x * x) + (y * y))));

            double Toward(QuadrantRadii radii)
            {
                var quarter = (x >= 0, y >= 0) switch { (true, true) => radii.NeNmi, (true, false) => radii.SeNmi, (false, false) => radii.SwNmi, _ => radii.NwNmi };
                return MeanReach * Math.Max(quarter, Fill * radii.MeanNmi);
            }
        }
    }
}
