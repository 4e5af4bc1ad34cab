using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <param name="LeadHours">Hours after the synoptic time.</param>
/// <param name="MaxWindKt">Sustained; 0 where the storm is forecast to be gone.</param>
/// <param name="HeadingDeg">From the point before to the point after.</param>
/// <param name="Gone">Dissipated: no member has wind here.</param>
public sealed record TrackPoint(
    double LeadHours,
    GeoPoint Centre,
    double MaxWindKt,
    double HeadingDeg,
    QuadrantRadii? Radii34,
    QuadrantRadii? Radii50,
    QuadrantRadii? Radii64,
    bool Gone);

/// <summary>
/// An advisory as a line of points, from the present position at its own lead to the last point or to dissipation. Post-tropical
/// storms and remnants stay: they still have wind. After the last point nothing is known.
/// </summary>
public sealed class ForecastTrack
{
    private ForecastTrack(Instant origin, IReadOnlyList<TrackPoint> points)
    {
        Origin = origin;
        Points = points;
    }

    /// <summary>The synoptic time, from which leads count.</summary>
    public Instant Origin { get; }

    /// <summary>At least two, in order of lead.</summary>
    public IReadOnlyList<TrackPoint> Points { get; }

    public double HorizonHours => Points[^1].LeadHours;

    /// <summary>Where the centre is forecast to be, on the great circle between two points; held at both ends.</summary>
    public GeoPoint CentreAt(double leadHours)
    {
        var right = Points.TakeWhile(point => point.LeadHours < leadHours).Count();
        if (right == 0) return Points[0].Centre;
        if (right == Points.Count) return Points[^1].Centre;
        var (from, to) = (Points[right - 1], Points[right]);
        return GreatCircle.Along(from.Centre, to.Centre, (leadHours - from.LeadHours) / (to.LeadHours - from.LeadHours));
    }

    /// <summary>Strength between two points, knots; held at both ends.</summary>
    public double MaxWindKtAt(double leadHours)
    {
        var right = Points.TakeWhile(point => point.LeadHours < leadHours).Count();
        if (right == 0) return Points[0].MaxWindKt;
        if (right == Points.Count) return Points[^1].MaxWindKt;
        var (from, to) = (Points[right - 1], Points[right]);
        return from.MaxWindKt + (leadHours - from.LeadHours) / (to.LeadHours - from.LeadHours) * (to.MaxWindKt - from.MaxWindKt);
    }

    public static ForecastTrack Of(CycloneAdvisory advisory)
    {
        var written = Written(advisory);
        var points = new List<TrackPoint>(written.Count);
        var centre = written.Select(point => point.Centre).FirstOrDefault(known => known is not null)
            ?? throw new ArgumentException($"{advisory.Title} gives no position at all.", nameof(advisory));

        // A wind that is not given is never taken as calm: the last one given holds, or the first that follows, or gale force.
        var wind = written.Select(point => point.MaxWindKt).FirstOrDefault(known => known is not null) ?? Wind.GaleKt;
        foreach (var point in written)
        {
            centre = point.Centre ?? centre;
            wind = point.MaxWindKt ?? wind;
            var gone = point.Nature == CycloneNature.Dissipated;
            var lead = (point.Valid - advisory.Synoptic).TotalHours;
            points.Add(new(lead, centre, gone ? 0 : wind, 0, point.Radii34, point.Radii50, point.Radii64, gone));
        }

        // A lone position is held for a moment, so that the wind it has now counts.
        if (points.Count == 1) points.Add(points[0] with { LeadHours = points[0].LeadHours + Ensemble.StepHours });
        return new(advisory.Synoptic, WithHeadings(points));
    }

    /// <summary>The present point and what follows it, up to and including dissipation.</summary>
    private static List<CyclonePoint> Written(CycloneAdvisory advisory)
    {
        var written = new List<CyclonePoint> { advisory.Now };
        foreach (var point in advisory.Forecast.OrderBy(point => point.Valid))
        {
            if (written[^1].Nature == CycloneNature.Dissipated) break;
            if (point.Valid > written[^1].Valid) written.Add(point);
        }

        return written;
    }

    private static TrackPoint[] WithHeadings(List<TrackPoint> points)
    {
        var headed = new TrackPoint[points.Count];
        for (var k = 0; k < headed.Length; k++)
        {
            var (before, after) = (points[Math.Max(k - 1, 0)], points[Math.Min(k + 1, headed.Length - 1)]);
            headed[k] = points[k] with { HeadingDeg = GreatCircle.BearingDeg(before.Centre, after.Centre) };
        }

        return headed;
    }
}
