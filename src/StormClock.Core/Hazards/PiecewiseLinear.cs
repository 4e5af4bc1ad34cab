namespace StormClock.Core.Hazards;

/// <summary>A table read between its rows by straight lines, and held at its ends.</summary>
internal static class PiecewiseLinear
{
    /// <param name="xs">Ascending.</param>
    public static double At(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, double x)
    {
        if (x <= xs[0]) return ys[0];
        for (var i = 1; i < xs.Length; i++)
        {
            if (x <= xs[i]) return ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
        }

        return ys[^1];
    }
}
