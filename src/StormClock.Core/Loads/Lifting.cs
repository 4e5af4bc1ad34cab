namespace StormClock.Core.Loads;

/// <summary>
/// What a person may lift with two hands from a standing position: revised NIOSH equation (NIOSH 94-110; R2 for the form, FM and CM are M;
/// trade.md 4.1). Not for carrying, dragging or one hand.
/// </summary>
public static class Lifting
{
    /// <summary>Load in the best position, kg.</summary>
    public const double LoadConstantKg = 23;

    /// <summary>Of the sum of what two people may lift alone (UK HSE, M).</summary>
    public const double TwoPeopleShare = 2.0 / 3;

    /// <summary>kg: 23 · 25/H · (1 − 0.003 |V − 75|) · (0.82 + 4.5/D) · (1 − 0.0032 A) · FM · CM; no part above 1 or below 0.</summary>
    /// <param name="reachCm">H, from between the ankles to the hands.</param>
    /// <param name="handsCm">V, of the hands above the floor at the start.</param>
    /// <param name="raisedCm">D, how far it is raised or lowered.</param>
    /// <param name="twistDeg">A.</param>
    /// <param name="frequency">FM, up to an hour: 1 at a lift in five minutes, 0.94 at one a minute, 0.88 at three.</param>
    /// <param name="grip">CM: 1 good, 0.95 fair, 0.9 poor.</param>
    public static double LimitKg(double reachCm, double handsCm, double raisedCm, double twistDeg = 0, double frequency = 1, double grip = 1) =>
        LoadConstantKg * Share(25 / reachCm) * Share(1 - 0.003 * Math.Abs(handsCm - 75)) * Share(0.82 + 4.5 / raisedCm)
        * Share(1 - 0.0032 * twistDeg) * frequency * grip;

    /// <summary>Load over limit: above 1 the risk is raised, 3 is high.</summary>
    public static double Index(double loadKg, double limitKg) => loadKg / limitKg;

    /// <summary>kg that two people may lift together.</summary>
    public static double TogetherKg(double oneKg, double otherKg) => TwoPeopleShare * (oneKg + otherKg);

    private static double Share(double part) => Math.Clamp(part, 0, 1);
}
