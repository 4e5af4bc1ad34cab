using StormClock.Core.Advisories;

namespace StormClock.Core.Hazards;

/// <summary>
/// How far one wind reaches at one point of a track, in the mean over all directions, with the storm's strength that this holds
/// for. Missing radii are resolved here (science.md 1.2).
/// </summary>
/// <param name="MeanNmi">Mean of the four quarters at <paramref name="AtMaxKt"/>; 0 only where the storm is gone.</param>
/// <param name="AtMaxKt">The forecast maximum wind or the wind itself, whichever is stronger.</param>
internal readonly record struct ForecastReach(double MeanNmi, double AtMaxKt, QuadrantShape Shape)
{
    /// <summary>
    /// One reach for each point. Where the text gives radii they count; for winds between or beyond 34, 50 and 64 kt they are read
    /// off the profile through the means, and below 34 kt off its outer part. Where it gives none the mean is climatology
    /// times the storm's own size factor, taken from the last point that had that wind (or else the first that will have it),
    /// with the shape of that point. Where the forecast is weaker than the wind this is the reach of members that are not.
    /// </summary>
    public static ForecastReach[] Along(ForecastTrack track, double windKt)
    {
        var points = track.Points;
        var known = new Known?[points.Count];
        for (var k = 0; k < known.Length; k++) known[k] = Known.At(points[k], windKt);

        var reaches = new ForecastReach[points.Count];
        var last = Array.Find(known, point => point is not null);
        for (var k = 0; k < reaches.Length; k++)
        {
            last = known[k] ?? last;
            var point = points[k];
            var atMaxKt = Math.Max(point.MaxWindKt, windKt);
            var mean = known[k]?.MeanNmi
                ?? (last?.SizeFactor ?? SizeFactorBy34(points, k)) * Climatology.Radius34Nmi(atMaxKt, point.Centre.LatDeg) * Climatology.ShareOf34(windKt, atMaxKt);
            var shape = last?.Shape ?? ShapeBy34(points, k);
            reaches[k] = new(point.Gone ? 0 : mean, atMaxKt, shape);
        }

        return reaches;
    }

    private static double SizeFactorBy34(IReadOnlyList<TrackPoint> points, int k) => Nearest34(points, k)?.SizeFactor ?? 1;

    private static QuadrantShape ShapeBy34(IReadOnlyList<TrackPoint> points, int k) =>
        Nearest34(points, k)?.Shape ?? QuadrantShape.FromHeading(points[k].HeadingDeg, points[k].Centre.LatDeg);

    /// <summary>The radii of 34 kt at this point, or at the last before, or at the first after.</summary>
    private static Known? Nearest34(IReadOnlyList<TrackPoint> points, int k)
    {
        var before = Enumerable.Range(0, k + 1).Reverse();
        var after = Enumerable.Range(k + 1, points.Count - k - 1);
        return before.Concat(after).Select(i => Known.At(points[i], 34)).FirstOrDefault(known => known is not null);
    }

    private sealed record Known(double MeanNmi, double SizeFactor, QuadrantShape Shape)
    {
        public static Known? At(TrackPoint point, double windKt)
        {
            if (point.Gone || Given(point.Radii34) is not { } radii34) return null;
            var (mean50, mean64) = (Given(point.Radii50)?.MeanNmi ?? 0, Given(point.Radii64)?.MeanNmi ?? 0);
            QuadrantRadii? shape = windKt switch { < 50 => radii34, < 64 => Given(point.Radii50), _ => Given(point.Radii64) };
            if (shape is null) return null;

            var mean = windKt switch
            {
                34 => radii34.MeanNmi,
                50 => mean50,
                64 => mean64,
                _ => RadialProfile.Through(radii34.MeanNmi, mean50, mean64, point.MaxWindKt, point.Centre.LatDeg).RadiusNmi(windKt),
            };
            if (mean <= 0) return null;

            var atMaxKt = Math.Max(point.MaxWindKt, windKt);
            var usual = Climatology.Radius34Nmi(atMaxKt, point.Centre.LatDeg) * Climatology.ShareOf34(windKt, atMaxKt);
            return new(mean, mean / usual, QuadrantShape.Of(shape.Value));
        }

        /// <summary>A line of four zeros says no more than no line.</summary>
        private static QuadrantRadii? Given(QuadrantRadii? radii) => radii is { LargestNmi: > 0 } ? radii : null;
    }
}
