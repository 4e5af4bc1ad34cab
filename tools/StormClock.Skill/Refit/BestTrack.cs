using System.Globalization;
using NodaTime.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Skill.Refit;

/// <summary>Where a storm was at a moment, how strong and how large, by the later analysis.</summary>
public sealed record Fix(Instant At, GeoPoint Centre, double MaxWindKt, QuadrantRadii Radii34);

/// <summary>The fixes of one storm, six hours apart and at landfall.</summary>
public sealed class BestTrack(IReadOnlyList<Fix> fixes)
{
    // Farther apart than this something is missing between two fixes.
    private static readonly Duration LongestGap = Duration.FromHours(6);

    /// <summary>All storms of a HURDAT2 table in CSV, by storm id.</summary>
    public static IReadOnlyDictionary<string, BestTrack> ReadAll(string path) =>
        File.ReadLines(path).Skip(1).Select(line => line.Split(','))
            .GroupBy(cells => cells[0])
            .ToDictionary(storm => storm.Key, storm => new BestTrack([.. storm.Select(FixOf).OrderBy(fix => fix.At)]));

    /// <summary>Interpolated by straight lines; null before, after, and in gaps.</summary>
    public Fix? At(Instant time)
    {
        for (var k = 0; k < fixes.Count; k++)
        {
            if (fixes[k].At == time) return fixes[k];
            if (k == 0 || fixes[k].At < time || fixes[k - 1].At > time) continue;
            var (before, after) = (fixes[k - 1], fixes[k]);
            return after.At - before.At > LongestGap ? null : Between(before, after, time);
        }

        return null;
    }

    private static Fix Between(Fix before, Fix after, Instant time)
    {
        var share = (time - before.At) / (after.At - before.At);
        var (a, b) = (before.Radii34, after.Radii34);
        return new(
            time,
            new(Mix(before.Centre.LatDeg, after.Centre.LatDeg),
                GreatCircle.WrapLonDeg(before.Centre.LonDeg + share * GreatCircle.WrapLonDeg(after.Centre.LonDeg - before.Centre.LonDeg))),
            Mix(before.MaxWindKt, after.MaxWindKt),
            new(Mix(a.NeNmi, b.NeNmi), Mix(a.SeNmi, b.SeNmi), Mix(a.SwNmi, b.SwNmi), Mix(a.NwNmi, b.NwNmi)));

        double Mix(double x, double y) => x + share * (y - x);
    }

    private static Fix FixOf(string[] cells)
    {
        var at = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'").Parse(cells[2]).Value;
        return new(at, new(Number(5), Number(6)), Number(7), new(Radius(9), Radius(10), Radius(11), Radius(12)));

        double Number(int cell) => double.Parse(cells[cell], CultureInfo.InvariantCulture);

        // Radii that were not analysed are empty or -99.
        double Radius(int cell) => double.TryParse(cells[cell], CultureInfo.InvariantCulture, out var value) && value > 0 ? value : 0;
    }
}
