namespace StormClock.Core.Water;

/// <summary>What a pot takes up before water stands in it (science.md 6).</summary>
public static class Soaking
{
    /// <summary>Share of a potting mix that is air when it has drained: 0.15 to 0.25 (M); the middle.</summary>
    public const double AirFilledShare = 0.20;

    /// <summary>Litres until the mix is full.</summary>
    public static double FreeL(double potL, double airFilledShare) => potL * airFilledShare;

    /// <summary>Rain into the open mouth of a round pot until the mix is full, mm.</summary>
    public static double MmToFull(double freeL, double mouthM) => freeL / (Math.PI * mouthM * mouthM / 4);
}
