namespace StormClock.Core.Loads;

/// <summary>The normal distribution.</summary>
internal static class NormalCurve
{
    /// <summary>Φ(x), wrong by less than 1e-7 (Abramowitz and Stegun 26.2.17, M).</summary>
    public static double Below(double x)
    {
        if (x > 0) return 1 - Below(-x);
        var t = 1 / (1 - 0.2316419 * x);
        var series = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return series * Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
    }
}
