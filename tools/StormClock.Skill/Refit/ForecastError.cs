using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Skill.Refit;

/// <summary>How one forecast point came out.</summary>
/// <param name="AlongNmi">Positive: the storm was ahead of its forecast.</param>
/// <param name="CrossNmi">Positive: right of it.</param>
/// <param name="WindKt">Observed less forecast.</param>
/// <param name="LnSize">Logarithm of observed over forecast mean radius of 34 kt; null where either is missing.</param>
/// <param name="SpeedKt">Forecast speed over the ground, from the point before to the point after.</param>
public sealed record ForecastError(
    string Storm, Instant Origin, double LeadHours, double AlongNmi, double CrossNmi, double WindKt, double? LnSize, double SpeedKt, double ForecastKt)
{
    private const double SlowKt = 0.5;

    /// <summary>One for each point of the track at which the storm still was.</summary>
    public static IEnumerable<ForecastError> Of(string storm, ForecastTrack track, BestTrack truth)
    {
        for (var k = 0; k < track.Points.Count; k++)
        {
            var point = track.Points[k];
            if (point.Gone || truth.At(track.Origin + Duration.FromHours(point.LeadHours)) is not { } fix) continue;

            var plane = new LocalPlane(point.Centre);
            var (before, after) = (track.Points[Math.Max(k - 1, 0)], track.Points[Math.Min(k + 1, track.Points.Count - 1)]);
            var (x1, y1) = plane.Place(before.Centre);
            var (x2, y2) = plane.Place(after.Centre);
            var length = Math.Sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1));
            var speed = length / (after.LeadHours - before.LeadHours);
            var (east, north) = speed < SlowKt ? (0, 1) : ((x2 - x1) / length, (y2 - y1) / length);
            var (dx, dy) = plane.Place(fix.Centre);
            double? size = point.Radii34 is { MeanNmi: > 0 } radii && fix.Radii34.MeanNmi > 0 ? Math.Log(fix.Radii34.MeanNmi / radii.MeanNmi) : null;
            yield return new(
                storm, track.Origin, point.LeadHours, dx * east + dy * north, dx * north - dy * east,
                fix.MaxWindKt - point.MaxWindKt, size, speed, point.MaxWindKt);
        }
    }
}
