using StormClock.Core.Units;

namespace StormClock.Core.Loads;

/// <summary>Chance that a thing fails in a peak gust: Φ(ln(V / V̂) / β) (science.md 5.5, C).</summary>
public static class Fragility
{
    /// <summary>Things that stand by their weight.</summary>
    public const double BetaRigid = 0.25;

    /// <summary>Things that are tied, strapped or hung.</summary>
    public const double BetaTied = 0.30;

    /// <summary>Trees, stems and posts in the ground.</summary>
    public const double BetaGrown = 0.35;

    // Φ⁻¹(0.9): the gust that one in ten does not stand.
    private const double TenPercent = 1.2815515655446004;

    /// <summary>0 to 1, for the peak gust at the thing.</summary>
    /// <param name="medianMps">Gust at which one in two fails; above zero.</param>
    /// <param name="beta">Above zero.</param>
    public static double Chance(double gustMps, double medianMps, double beta) =>
        gustMps > 0 ? Normal.Cdf(Math.Log(gustMps / medianMps) / beta) : 0;

    /// <summary>Gust, m/s, at which one in ten fails: a target to tie and weigh for, not a promise.</summary>
    public static double SafeGustMps(double medianMps, double beta) => medianMps * Math.Exp(-TenPercent * beta);
}
