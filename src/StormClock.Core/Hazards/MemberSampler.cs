using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Turns a member's unit normals into a path (science.md 3.3): errors that persist from lead to lead, along and across the track, in
/// strength and in size, and one factor on the whole track error.
/// </summary>
internal sealed class MemberSampler
{
    private readonly Persistence along;
    private readonly Persistence cross;
    private readonly Persistence wind;
    private readonly Persistence size;
    private readonly ErrorStatistics errors;
    private readonly Column[] columns;
    private readonly bool[] gone;
    private readonly Weights[] weights;

    public MemberSampler(ForecastTrack track, ErrorStatistics errors)
    {
        this.errors = errors;
        along = new(errors.AlongSigmaNmi, errors.TrackScale, errors.AlongRho);
        cross = new(errors.CrossSigmaNmi, errors.TrackScale, errors.CrossRho);
        wind = new(errors.WindSigmaKt, errors.WindScale, errors.WindRho);
        size = new(errors.SizeSigma, errors.SizeScale, errors.SizeRho);
        columns = track.Points.Select(point => Column.At(point.LeadHours)).ToArray();
        gone = track.Points.Select(point => point.Gone).ToArray();
        weights = track.Points.Select((point, k) => Weights.At(errors, columns[k], SpeedKt(track, k), point.MaxWindKt)).ToArray();
    }

    public void Fill(MemberPath path, ReadOnlySpan<float> draws)
    {
        var leads = ErrorStatistics.LeadHours.Count;
        var sigma = errors.MultiplierSigma;
        var multiplier = Math.Exp(sigma * draws[0] - sigma * sigma);
        along.Fill(draws.Slice(1, leads), multiplier);
        cross.Fill(draws.Slice(1 + leads, leads), multiplier);
        wind.Fill(draws.Slice(1 + 2 * leads, leads), 1);
        size.Fill(draws.Slice(1 + 3 * leads, leads), 1);

        for (var k = 0; k < path.Count; k++)
        {
            var column = columns[k];
            ref readonly var weight = ref weights[k];
            path.AlongNmi[k] = along.At(column) * weight.Along + weight.AlongBiasNmi;
            path.CrossNmi[k] = cross.At(column);
            path.MaxKt[k] = gone[k] ? 0 : Math.Max(0, weight.LikelyKt + wind.At(column) * weight.Wind);
            path.Size[k] = Math.Exp(size.At(column) * weight.Size + errors.SizeBias) * errors.MeanReach;
        }
    }

    private static double SpeedKt(ForecastTrack track, int k)
    {
        var (before, after) = (track.Points[Math.Max(k - 1, 0)], track.Points[Math.Min(k + 1, track.Points.Count - 1)]);
        return GreatCircle.DistanceNmi(before.Centre, after.Centre) / (after.LeadHours - before.LeadHours);
    }

    /// <summary>What a point's speed and strength make of the errors of its lead; the bias is in the strength already.</summary>
    private readonly record struct Weights(double Along, double AlongBiasNmi, double LikelyKt, double Wind, double Size)
    {
        public static Weights At(ErrorStatistics errors, Column column, double speedKt, double forecastKt) => new(
            errors.AlongFactor(speedKt), errors.AlongBiasFactor(speedKt) * column.Of(errors.AlongBiasNmi),
            forecastKt + column.Of(errors.WindBiasKt), errors.WindFactor(forecastKt), errors.SizeFactor(forecastKt));
    }

    /// <summary>Where a lead lies between the columns of the statistics; held at both ends.</summary>
    private readonly record struct Column(int Left, int Right, double Share)
    {
        public static Column At(double leadHours)
        {
            var leads = ErrorStatistics.LeadHours;
            for (var right = 0; right < leads.Count; right++)
            {
                if (leadHours > leads[right]) continue;
                return right == 0 ? new(0, 0, 0) : new(right - 1, right, (leadHours - leads[right - 1]) / (leads[right] - leads[right - 1]));
            }

            return new(leads.Count - 1, leads.Count - 1, 0);
        }

        public double Of(IReadOnlyList<double> values) => values[Left] + Share * (values[Right] - values[Left]);
    }

    /// <summary>One error quantity: unit normals made persistent, then scaled: z(k) = ρ z(k−1) + √(1−ρ²) ε(k).</summary>
    private sealed class Persistence(IReadOnlyList<double> sigmas, double scale, IReadOnlyList<double> rhos)
    {
        private readonly double[] sigma = sigmas.Select(value => value * scale).ToArray();
        private readonly double[] rho = [.. rhos];
        private readonly double[] fresh = rhos.Select(value => Math.Sqrt(1 - value * value)).ToArray();
        private readonly double[] error = new double[sigmas.Count];

        public void Fill(ReadOnlySpan<float> normals, double multiplier)
        {
            double z = normals[0];
            for (var k = 0; k < error.Length; k++)
            {
                if (k > 0) z = rho[k - 1] * z + fresh[k - 1] * normals[k];
                error[k] = multiplier * sigma[k] * z;
            }
        }

        public double At(Column column) => error[column.Left] + column.Share * (error[column.Right] - error[column.Left]);
    }
}
