namespace StormClock.Core.Loads;

/// <summary>What must be added for a thing to stand a target gust (science.md 5.1). Put ballast low and in the middle.</summary>
public static class Ballast
{
    /// <summary>On the action of the wind (C).</summary>
    public const double SafetyFactor = 1.5;

    /// <summary>kg against sliding: q Σ Cd A / (μ g) − m; 0 when it stands already.</summary>
    public static double AgainstSlidingKg(double targetMps, double massKg, double friction, double dragAreaM2, double safety = SafetyFactor) =>
        Lacking(safety * VelocityPressure.AtPa(targetMps) * dragAreaM2 / (friction * Footing.Gravity), massKg);

    /// <summary>kg against tipping: q Σ Cd A h / (g b) − m; 0 when it stands already.</summary>
    public static double AgainstTippingKg(double targetMps, double massKg, double halfBaseM, double dragMomentM3, double safety = SafetyFactor) =>
        Lacking(safety * VelocityPressure.AtPa(targetMps) * dragMomentM3 / (Footing.Gravity * halfBaseM), massKg);

    /// <summary>Working load, N, of windward ties against sliding; 0 when it stands already.</summary>
    public static double TieAgainstSlidingN(
        double targetMps, double massKg, double friction, double dragAreaM2, double angleDeg = Tie.UsualAngleDeg, double safety = SafetyFactor)
    {
        var perNewton = new Tie(1, 0, angleDeg);
        var action = safety * VelocityPressure.AtPa(targetMps) * dragAreaM2;
        return Lacking(action, friction * massKg * Footing.Gravity) / (perNewton.AlongN + friction * perNewton.DownN);
    }

    /// <summary>Working load, N, of windward ties against tipping; 0 when it stands already.</summary>
    /// <param name="leverM">From the lee edge to where they pull down.</param>
    public static double TieAgainstTippingN(
        double targetMps, double massKg, double halfBaseM, double dragMomentM3, double leverM, double angleDeg = Tie.UsualAngleDeg,
        double safety = SafetyFactor)
    {
        var action = safety * VelocityPressure.AtPa(targetMps) * dragMomentM3;
        return Lacking(action, massKg * Footing.Gravity * halfBaseM) / (new Tie(1, leverM, angleDeg).DownN * leverM);
    }

    private static double Lacking(double needed, double there) => Math.Max(0, needed - there);
}
