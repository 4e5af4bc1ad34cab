namespace StormClock.Core.Loads;

/// <summary>What lines may carry, N, from what they break at (science.md 5.4, C; trade.md 2.3, M). The label goes before any of these.</summary>
public static class WorkingLoad
{
    private const double RopeShare = 0.2;
    private const double KnotShare = 0.5;
    private const double BuckleShare = 0.6;

    /// <summary>A rope: a fifth of its breaking load, half of that where it is knotted.</summary>
    public static double RopeN(double breakN, bool knotted) => breakN * RopeShare * (knotted ? KnotShare : 1);

    /// <summary>Webbing through a buckle or ratchet.</summary>
    /// <param name="ratedN">Working load of the webbing itself.</param>
    public static double WebbingN(double ratedN) => ratedN * BuckleShare;
}
