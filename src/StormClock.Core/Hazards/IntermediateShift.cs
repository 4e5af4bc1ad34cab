using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// What a newer message without a forecast, mostly an intermediate advisory, does to a forecast: the track and the strength are moved
/// to what it found, and the move fades over a day (science.md 4.1). It can only bring wind sooner, let it last longer or make it
/// stronger: for anything better a full advisory is waited for.
/// </summary>
public static class IntermediateShift
{
    private const double FadesHours = 24;

    /// <summary>Two rounded positions may differ by so much and mean the same (a tenth of a degree each, D).</summary>
    private const double RoundingNmi = 10;

    /// <summary>The members of the advisory, and where a newer position of its storm is of use, with what they do after it.</summary>
    public static WindMembers Applied(CycloneAdvisory advisory, IReadOnlyList<CyclonePosition> positions, Func<CycloneAdvisory, WindMembers> members)
    {
        var own = members(advisory);
        return Moved(advisory, positions) is { } moved ? Worse(own, members(moved)) : own;
    }

    /// <summary>
    /// The advisory as it would read from the newest position of its storm on; null when none is newer, or when no storm could have
    /// come there from where the advisory had it.
    /// </summary>
    public static CycloneAdvisory? Moved(CycloneAdvisory advisory, IReadOnlyList<CyclonePosition> positions)
    {
        if (PositionFor(advisory, positions) is not { } found) return null;

        var track = ForecastTrack.Of(advisory);
        var lead = (found.IssuedAt - advisory.Synoptic).TotalHours;
        var there = track.CentreAt(lead);
        var (north, east) = (found.Centre.LatDeg - there.LatDeg, GreatCircle.WrapLonDeg(found.Centre.LonDeg - there.LonDeg));
        var stronger = (found.MaxWindKt ?? track.MaxWindKtAt(lead)) - track.MaxWindKtAt(lead);
        return advisory with
        {
            Number = found.Number,
            Now = advisory.Now with { Valid = found.IssuedAt, Centre = found.Centre, MaxWindKt = found.MaxWindKt ?? advisory.Now.MaxWindKt, GustKt = null },
            Before = null,
            Forecast = [.. advisory.Forecast.Where(point => point.Valid > found.IssuedAt).Select(Shifted)],
        };

        CyclonePoint Shifted(CyclonePoint point)
        {
            var left = Math.Max(0, 1 - ((point.Valid - found.IssuedAt).TotalHours / FadesHours));
            return point with
            {
                Centre = point.Centre is { } centre ? new GeoPoint(Math.Clamp(centre.LatDeg + left * north, -90, 90), GreatCircle.WrapLonDeg(centre.LonDeg + left * east)) : null,
                MaxWindKt = point.MaxWindKt is { } wind ? Math.Max(0, wind + left * stronger) : null,
            };
        }
    }

    private static CyclonePosition? PositionFor(CycloneAdvisory advisory, IReadOnlyList<CyclonePosition> positions)
    {
        var newest = positions.FirstOrDefault(position => position.StormId == advisory.StormId && position.IssuedAt > advisory.IssuedAt);
        if (newest is null || advisory.Now.Centre is not { } from) return null;
        var hours = (newest.IssuedAt - advisory.Now.Valid).TotalHours;
        return GreatCircle.DistanceNmi(from, newest.Centre) <= RoundingNmi + TrackCheck.FastestKt * hours ? newest : null;
    }

    /// <summary>Member by member the first arrival, the last end and the strongest wind of the two.</summary>
    private static WindMembers Worse(WindMembers one, WindMembers other) => new(
        one.Origin,
        one.ThresholdsKt,
        [.. one.ThresholdsKt.Select(kt => Each(one.ArrivalHours(kt), other.ArrivalHours(kt), float.MinNumber))],
        [.. one.ThresholdsKt.Select(kt => Each(one.EndHours(kt), other.EndHours(kt), float.MaxNumber))],
        new Lazy<float[]>(() => Each(one.PeakKt.Span, other.PeakKt.Span, float.MaxNumber)),
        Math.Min(one.HorizonHours, other.HorizonHours));

    private static float[] Each(ReadOnlySpan<float> one, ReadOnlySpan<float> other, Func<float, float, float> of)
    {
        var both = new float[one.Length];
        for (var m = 0; m < both.Length; m++) both[m] = of(one[m], other[m]);
        return both;
    }
}
