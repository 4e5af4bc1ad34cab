namespace StormClock.Core.Loads;

/// <summary>Posts set in the ground that carry a panel (science.md 5.4). Learn from outcomes: soil decides more than any figure here.</summary>
public static class Posts
{
    /// <summary>Modulus of rupture of timber, Pa (M). Steel bends later, but thin posts lean before they bend.</summary>
    public const double WoodStrengthPa = 30e6;

    // Passive earth pressure coefficient of sandy soil (M).
    private const double PassivePressure = 3;

    /// <summary>Unit weight of sandy soil, N/m³: 17 kN dry, 8 kN under water (M).</summary>
    public static double SoilWeightNm3(Soil soil) => soil == Soil.Dry ? 17_000 : 8_000;

    /// <summary>Wind force on one post, N: q Σ Cd A / posts.</summary>
    public static double ForceN(double gustMps, double dragAreaM2, int posts) => VelocityPressure.AtPa(gustMps) * dragAreaM2 / posts;

    /// <summary>Pull at a height that a post stands: 0.5 γ d Kp e³ / (h + e), N (Broms 1964, short free-headed pile in sand, M).
    /// Clay holds half of it when soaked (C).</summary>
    /// <param name="deepM">e, how deep it stands.</param>
    /// <param name="pullHeightM">h, above ground.</param>
    public static double HoldsN(double widthM, double deepM, double pullHeightM, double soilWeightNm3) =>
        0.5 * soilWeightNm3 * widthM * PassivePressure * Math.Pow(deepM, 3) / (pullHeightM + deepM);

    /// <summary>Gust at which posts give in the ground, m/s.</summary>
    /// <param name="guysN">What guys hold along the ground, all together.</param>
    public static double LeansAtMps(
        double dragAreaM2, double pullHeightM, int posts, double widthM, double deepM, double soilWeightNm3, double guysN = 0) =>
        VelocityPressure.GustMps((posts * HoldsN(widthM, deepM, pullHeightM, soilWeightNm3) + guysN) / dragAreaM2);

    /// <summary>Gust at which round posts break at the ground, m/s: M = f π d³/32 each.</summary>
    public static double BreaksAtMps(double dragAreaM2, double pullHeightM, int posts, double widthM, double strengthPa, double guysN = 0) =>
        VelocityPressure.GustMps((posts * RoundBar.BendingStrengthNm(widthM, strengthPa) / pullHeightM + guysN) / dragAreaM2);
}
