using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>What the official wind speed probabilities say for a place: the rows of the nearest location that they name.</summary>
/// <param name="Location">As written.</param>
/// <param name="DistanceNmi">From the place to that location, whose own position is approximate.</param>
/// <param name="Rows">By wind, knots.</param>
public sealed record OfficialChances(
    WindProbabilityAdvisory Table, string Location, double DistanceNmi, IReadOnlyDictionary<int, WindProbabilityRow> Rows)
{
    /// <summary>Locations farther off say nothing about the place (science.md 3.6).</summary>
    public const double WithinNmi = 15;

    /// <summary>Null when the table has no row for a location near enough.</summary>
    public static OfficialChances? At(WindProbabilityAdvisory table, GeoPoint place) =>
        table.Rows
            .GroupBy(row => row.Location, StringComparer.Ordinal)
            .Select(rows => (Rows: rows, DistanceNmi: DistanceTo(rows.Key, place)))
            .Where(near => near.DistanceNmi <= WithinNmi)
            .OrderBy(near => near.DistanceNmi)
            .Select(near => new OfficialChances(table, near.Rows.Key, near.DistanceNmi, near.Rows.ToDictionary(row => row.WindKt)))
            .FirstOrDefault();

    /// <summary>
    /// Chance, 0 to 1, that the wind has come by a lead, hours after the synoptic time. 0 for a wind without a row of its own at a
    /// location that is listed: it is below the least chance for which rows are given.
    /// </summary>
    public double By(double windKt, int leadHours) =>
        Rows.TryGetValue((int)windKt, out var row) ? row.Periods.Last(period => period.UntilHour <= leadHours).CumulativePercent / 100.0 : 0;

    /// <summary>Within five days.</summary>
    public double Chance(double windKt) => By(windKt, 120);

    /// <summary>
    /// Earliest reasonable arrival given that the wind comes: the time by which a tenth of the whole chance is used up, by a straight
    /// line within its period. Null when there is no chance.
    /// </summary>
    public Instant? Earliest(double windKt)
    {
        if (!Rows.TryGetValue((int)windKt, out var row) || row.Periods[^1].CumulativePercent == 0) return null;
        var share = row.Periods[^1].CumulativePercent * CarefulTimes.TenthShare;
        var period = row.Periods.First(period => period.CumulativePercent >= share);
        var before = row.Periods.LastOrDefault(earlier => earlier.UntilHour < period.UntilHour);
        var into = (share - before.CumulativePercent) / (period.CumulativePercent - before.CumulativePercent);
        return Table.Synoptic + Duration.FromHours(before.UntilHour + into * (period.UntilHour - before.UntilHour));
    }

    private static double DistanceTo(string location, GeoPoint place) =>
        ProbabilityPlaces.Find(location) is { } at ? GreatCircle.DistanceNmi(at, place) : double.PositiveInfinity;
}
