namespace StormClock.Core.Loads;

/// <summary>
/// Gusts at which a thing that only stands there starts to move: action equals resistance (science.md 5.1, M). A rigid thing in a
/// steady gust: an upper bound of the load, for ranking. No uplift on a standing thing. Nothing else holds it but its weight and its ties.
/// </summary>
public static class Footing
{
    /// <summary>m/s².</summary>
    public const double Gravity = 9.80665;

    /// <summary>V = √[(μ(mg + T sin θ) + T cos θ) / (0.613 Σ Cd A)], m/s.</summary>
    /// <param name="dragAreaM2">Σ Cd A.</param>
    public static double SlidesAtMps(double massKg, double friction, double dragAreaM2, Tie tie = default) =>
        VelocityPressure.GustMps((friction * (massKg * Gravity + tie.DownN) + tie.AlongN) / dragAreaM2);

    /// <summary>V = √[(mg b + T sin θ · lever) / (0.613 Σ Cd A h)], m/s, about the lee edge of the foot.</summary>
    /// <param name="halfBaseM">From the centre of mass to the lee edge, along the ground.</param>
    /// <param name="dragMomentM3">Σ Cd A h.</param>
    public static double TipsAtMps(double massKg, double halfBaseM, double dragMomentM3, Tie tie = default) =>
        VelocityPressure.GustMps((massKg * Gravity * halfBaseM + tie.DownN * tie.LeverM) / dragMomentM3);

    /// <summary>V = √[(mg + T) / (0.613 Cl A)], m/s.</summary>
    /// <param name="liftAreaM2">Cl A.</param>
    public static double LiftsAtMps(double massKg, double liftAreaM2, double heldDownN = 0) =>
        VelocityPressure.GustMps((massKg * Gravity + heldDownN) / liftAreaM2);
}
