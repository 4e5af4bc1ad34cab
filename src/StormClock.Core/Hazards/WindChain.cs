using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// From the marine wind of an advisory (1-min mean, 10 m, open water) to the wind in a garden (science.md 2.3, 2.4). Sustained
/// wind and gust are two scales with two chains: never multiply one chain's result by the other's factor.
/// </summary>
public static class WindChain
{
    /// <summary>Gust at 10 m over marine 1-min wind, for planning; leaves room for rain bands (D, ±8 %).</summary>
    public const double PlanningGustFactor = 1.30;

    // Below this height the profile is held: the code it comes from stops at 4.57 m, garden things stand lower (C).
    private const double LeastHeightM = 1.0;

    /// <summary>Sustained (1-min) wind at 10 m at the garden, in the unit of the marine wind.</summary>
    public static double SustainedAtGarden(double marineWind, Terrain terrain) => marineWind * SustainedFactor(terrain);

    /// <summary>The marine wind that brings this sustained wind to the garden.</summary>
    public static double MarineForSustained(double gardenWind, Terrain terrain) => gardenWind / SustainedFactor(terrain);

    /// <summary>3-s gust at 10 m in the open, in the unit of the marine wind. Rough ground lowers the mean and raises the gust
    /// factor, so that one factor serves every terrain.</summary>
    public static double GustAt10M(double marineWind) => marineWind * PlanningGustFactor;

    /// <summary>The marine wind that brings this 3-s gust.</summary>
    public static double MarineForGust(double gust) => gust / PlanningGustFactor;

    /// <summary>Gust on a thing at a height above ground, in the unit of the gust at 10 m.</summary>
    public static double GustAtHeight(double gustAt10M, double heightM, Terrain terrain, Exposure exposure) =>
        gustAt10M * Math.Sqrt(VelocityPressureShare(heightM, terrain)) * ShelterFactor(exposure);

    /// <summary>
    /// Velocity pressure at a height over that at 10 m in open land: Kz = 2.01 (z/zg)^(2/a), ASCE 7-16 table 26.10-1 (R2 for form
    /// and constants), carried down to 1 m (C). Exposure B for suburb, wood and town, C for farmland, D for the open coast.
    /// </summary>
    public static double VelocityPressureShare(double heightM, Terrain terrain)
    {
        var (gradientHeightM, exponent) = terrain switch
        {
            Terrain.OpenCoast => (213.4, 11.5),
            Terrain.OpenFarmland => (274.3, 9.5),
            _ => (365.8, 7.0),
        };
        return 2.01 * Math.Pow(Math.Max(heightM, LeastHeightM) / gradientHeightM, 2 / exponent);
    }

    /// <summary>After log-law roughness lengths 0.003, 0.03, 0.3 and 0.8 m (C, ±0.07).</summary>
    private static double SustainedFactor(Terrain terrain) => terrain switch
    {
        Terrain.OpenCoast => 1.0,
        Terrain.OpenFarmland => 0.85,
        Terrain.Suburb => 0.70,
        Terrain.WoodOrTown => 0.60,
        _ => throw new ArgumentOutOfRangeException(nameof(terrain), terrain, null),
    };

    /// <summary>Never below 0.7: the wind turns through 90 to 180° while a storm passes (C).</summary>
    private static double ShelterFactor(Exposure exposure) => exposure switch
    {
        Exposure.Open => 1.0,
        Exposure.PartlySheltered => 0.85,
        Exposure.Sheltered => 0.7,
        Exposure.Funnel => 1.2,
        _ => throw new ArgumentOutOfRangeException(nameof(exposure), exposure, null),
    };
}
