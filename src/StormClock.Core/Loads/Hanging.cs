namespace StormClock.Core.Loads;

/// <summary>Things that hang: θ = atan(F / mg) (science.md 5.4).</summary>
public static class Hanging
{
    /// <summary>Out of plumb from which it must come down (C).</summary>
    public const double LimitDeg = 30;

    /// <summary>Degrees out of plumb in a gust.</summary>
    public static double SwingDeg(double gustMps, double massKg, double dragAreaM2) =>
        Math.Atan(VelocityPressure.AtPa(gustMps) * dragAreaM2 / (massKg * Footing.Gravity)) * (180 / Math.PI);

    /// <summary>V = √[(tan θ · mg + T) / (0.613 Cd A)], m/s.</summary>
    /// <param name="tiedN">What ties it sideways.</param>
    public static double SwingsAtMps(double massKg, double dragAreaM2, double deg = LimitDeg, double tiedN = 0) =>
        VelocityPressure.GustMps((Math.Tan(deg * (Math.PI / 180)) * massKg * Footing.Gravity + tiedN) / dragAreaM2);
}
