namespace StormClock.Core.Hazards;

/// <summary>
/// Mean radii of storms by strength and latitude: best tracks 2004–2018, n = 4513, scatter σ ln = 0.52 (science.md 3.4, D).
/// Stands in where an advisory gives no radii, and says how a member's size follows its strength.
/// </summary>
public static class Climatology
{
    private static readonly double[] WindOf34 = [20, 34, 37, 45, 57, 73, 90, 105, 130, 185];
    private static readonly double[] RadiusOf34 = [15, 28, 33, 59, 90, 113, 117, 122, 130, 140];
    private static readonly double[] WindOf50 = [50, 60, 75, 90, 130];
    private static readonly double[] ShareOf50 = [0.20, 0.34, 0.46, 0.517, 0.54];
    private static readonly double[] WindOf64 = [64, 72, 90, 105, 130];
    private static readonly double[] ShareOf64 = [0.13, 0.19, 0.277, 0.29, 0.317];

    /// <summary>Mean radius of 34 kt wind, n mi, of a storm with this maximum wind.</summary>
    public static double Radius34Nmi(double maxKt, double latDeg) =>
        PiecewiseLinear.At(WindOf34, RadiusOf34, maxKt) * Math.Exp(0.026 * (Math.Clamp(Math.Abs(latDeg), 10, 45) - 25));

    /// <summary>
    /// Mean radius of a wind over that of 34 kt. Below 34 kt it follows the outer profile of <see cref="RadialProfile"/>, a
    /// constant: nothing better is published for it. Between and beyond the three measured winds it goes by log-log lines.
    /// </summary>
    public static double ShareOf34(double windKt, double maxKt)
    {
        if (windKt <= 34) return RadialProfile.Through(1, 0, 0, 34, 0).RadiusNmi(windKt);
        var share50 = PiecewiseLinear.At(WindOf50, ShareOf50, maxKt);
        if (windKt <= 50) return LogLog(windKt, 34, 1, 50, share50);
        return LogLog(windKt, 50, share50, 64, PiecewiseLinear.At(WindOf64, ShareOf64, maxKt));
    }

    private static double LogLog(double windKt, double wind1, double share1, double wind2, double share2) =>
        share1 * Math.Pow(share2 / share1, Math.Log(windKt / wind1) / Math.Log(wind2 / wind1));
}
