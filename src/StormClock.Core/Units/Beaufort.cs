namespace StormClock.Core.Units;

/// <summary>Beaufort force of a sustained wind (m/s edges as in trade.md 1.3, R).</summary>
public static class Beaufort
{
    private static readonly double[] FromMps = [0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7];

    /// <summary>0 to 12.</summary>
    public static int Force(double sustainedMps) => FromMps.Count(edge => sustainedMps >= edge);
}
