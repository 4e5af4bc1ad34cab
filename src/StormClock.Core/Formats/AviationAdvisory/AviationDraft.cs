using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.AviationAdvisory;

/// <summary>A point as an advisory for aviation gives it: no radii, and the wind as a mean over 10 minutes.</summary>
internal sealed record AviationPoint(Instant Valid, GeoPoint? Centre, double? TenMinuteKt);

/// <summary>What XML and text of a tropical cyclone advisory for aviation have in common (ICAO Annex 3, appendix 2).</summary>
internal sealed record AviationDraft(string Centre, string Name, string Number, Instant Issued, AviationPoint Now, IReadOnlyList<AviationPoint> Forecast, bool Corrected)
{
    /// <summary>1-min wind over 10-min wind at sea (science.md 2.3, M).</summary>
    private const double OneMinuteOverTen = 1 / 0.93;

    /// <summary>The advisory, or what of its track cannot be.</summary>
    public ReadResult<CycloneAdvisory> Finish()
    {
        var advisory = new CycloneAdvisory(
            FormattableString.Invariant($"{Centre}-{Name}-{Issued.InUtc().Year}"),
            Name,
            Number,
            Issued,
            AdvisoryTime.Synoptic(Issued),
            Point(Now),
            Before: null,
            [.. Forecast.Where(point => point.Centre is not null && point.Valid > Now.Valid).OrderBy(point => point.Valid).DistinctBy(point => point.Valid).Select(Point)],
            Corrected);
        if (Forecast.Any(point => point.Valid > Issued + AdvisoryTime.Farthest) || Now.Valid > Issued + Duration.FromHours(1) || Now.Valid < Issued - Duration.FromDays(1))
        {
            return new ReadFault("the times", "a position lies more than 6 days after the advisory or a day before it");
        }

        var track = TrackCheck.Of(advisory);
        return track.Impossible.Count == 0
            ? track.Mended with { Mends = [.. track.Mended.Mends, "winds are means over 10 minutes and were raised to 1 minute (divided by 0.93); wind radii are not given and are taken from experience"] }
            : ReadResult.Bad<CycloneAdvisory>([.. track.Impossible.Select(fault => new ReadFault(FormattableString.Invariant($"position of {fault.At:dd/HHmm'Z'}"), fault.Reason))]);
    }

    private static CyclonePoint Point(AviationPoint point) =>
        new(point.Valid, point.Centre, point.TenMinuteKt * OneMinuteOverTen, GustKt: null, Radii34: null, Radii50: null, Radii64: null);
}
