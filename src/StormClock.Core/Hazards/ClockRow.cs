using System.Globalization;
using NodaTime.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// What one advisory means at one place, as the <c>clock</c> command writes it in JSON (product.md 4): with camel-case names
/// these records are that shape.
/// </summary>
/// <param name="Storm">Storm id, e.g. <c>AL092022</c>.</param>
/// <param name="Advisory">Advisory number as written.</param>
/// <param name="Issued">UTC, ISO 8601 with Z.</param>
/// <param name="PeakGustMps">At 10 m in the open, over all members.</param>
/// <param name="WindFrom">Where wind of 34 kt comes from by the forecast track; null when it (almost) never comes.</param>
/// <param name="OfficialLocation">Whose official chances were used, as written; null when none was at hand.</param>
/// <param name="SourcesDiffer">The official chance of 34 kt and ours are more than 20 points apart; null when there is no official one.</param>
public sealed record ClockRow(
    string Storm,
    string Advisory,
    string Issued,
    string Place,
    IReadOnlyList<ClockWind> Wind,
    PeakGust PeakGustMps,
    ClockDirection? WindFrom,
    string? OfficialLocation,
    bool? SourcesDiffer)
{
    /// <summary>The winds that are reported, knots sustained.</summary>
    public static IReadOnlyList<double> ThresholdsKt { get; } = [34, 50, 64];

    /// <param name="members">Of this advisory at this place, with at least <see cref="ThresholdsKt"/>.</param>
    /// <param name="official">Chances for the place issued with this advisory; null when there are none.</param>
    public static ClockRow Of(CycloneAdvisory advisory, string place, GeoPoint at, WindMembers members, OfficialChances? official = null)
    {
        var crossings = ThresholdsKt.Select(threshold => WindCrossing.Of(members, threshold, advisory.IssuedAt)).ToList();
        var winds = new List<ClockWind>();
        foreach (var crossing in crossings) winds.Add(ClockWind.Of(crossing, official, winds.LastOrDefault()));

        return new(
            advisory.StormId,
            advisory.Number,
            ClockWind.Text(advisory.IssuedAt)!,
            place,
            winds,
            PeakGust.At(members, heightM: 10, Terrain.OpenFarmland, Exposure.Open).Rounded(),
            ClockDirection.Of(advisory, at, crossings[0]),
            official?.Location,
            official is null ? null : OfficialBlend.Differ(winds[0].Chance, winds[0].OfficialChance!.Value));
    }
}

/// <summary>Where the wind comes from, whole degrees from north, clockwise; ±25° where the track holds.</summary>
/// <param name="ArrivalDeg">At its most likely arrival.</param>
/// <param name="EndDeg">At its end.</param>
public sealed record ClockDirection(int ArrivalDeg, int EndDeg)
{
    internal static ClockDirection? Of(CycloneAdvisory advisory, GeoPoint at, WindCrossing crossing)
    {
        if (crossing is not { MostLikely: { } arrival, End: { } end }) return null;
        var track = ForecastTrack.Of(advisory);
        return new(FromDeg(arrival), FromDeg(end));

        int FromDeg(Instant when) => (int)Math.Round(WindDirection.FromDeg(track.CentreAt((when - track.Origin).TotalHours), at)) % 360;
    }
}

/// <param name="Chance">0 to 1, to four places; the official chance is mixed in at 50 and 64 kt where there is one.</param>
/// <param name="ChanceBy">The same by hours after the synoptic time.</param>
/// <param name="EarliestReasonable">This and the next three: UTC, ISO 8601 with Z; null when the wind (almost) never comes. All times are ours alone.</param>
/// <param name="TotalTenPercent">When the chance by our members has risen to 10 %; null when it stays below.</param>
/// <param name="OfficialChance">0 to 1, within five days; null when there is none at hand.</param>
public sealed record ClockWind(
    double ThresholdKt,
    double Chance,
    IReadOnlyDictionary<string, double> ChanceBy,
    string? EarliestReasonable,
    string? MostLikely,
    string? Latest,
    string? End,
    string? TotalTenPercent,
    double? OfficialChance)
{
    /// <param name="weaker">The wind before this one, whose chance is never below; null for the first.</param>
    internal static ClockWind Of(WindCrossing crossing, OfficialChances? official, ClockWind? weaker)
    {
        var kt = crossing.ThresholdKt;
        return new(
            kt,
            Mixed(crossing.Chance, official?.Chance(kt), weaker?.Chance),
            crossing.ChanceBy.ToDictionary(by => Key(by.Key), by => Mixed(by.Value, official?.By(kt, by.Key), weaker?.ChanceBy[Key(by.Key)])),
            Text(crossing.EarliestReasonable),
            Text(crossing.MostLikely),
            Text(crossing.Latest),
            Text(crossing.End),
            Text(crossing.TotalTenPercent),
            official?.Chance(kt));

        double Mixed(double ours, double? theirs, double? most) => Math.Round(Math.Min(OfficialBlend.Chance(kt, ours, theirs), most ?? 1), 4);
    }

    internal static string? Text(Instant? when) => when is { } known ? InstantPattern.General.Format(known) : null;

    private static string Key(int lead) => lead.ToString(CultureInfo.InvariantCulture);
}
