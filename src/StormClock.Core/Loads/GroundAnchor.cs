using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What holds in the ground. The maker's figure by soil class goes before any of these.</summary>
public static class GroundAnchor
{
    /// <summary>Left of a hold in soil that is saturated (science.md 5.4, C).</summary>
    public const double SaturatedShare = 0.6;

    /// <summary>Of the pull at which it comes out over the working load (science.md 5.4, C).</summary>
    public const double SafetyFactor = 2;

    /// <summary>kg/m³, moist; 900 under water (trade.md 2.7, D).</summary>
    public const double MoistSoilKgM3 = 1700;

    private const double ConeDeg = 30;

    /// <summary>Straight pull at which a plate comes out, N: weight of the soil cone above it (trade.md 2.7, D). No suction, no cohesion.</summary>
    public static double ConeUpliftN(double plateM, double deepM, double soilKgM3)
    {
        var (below, above) = (plateM / 2, plateM / 2 + deepM * Math.Tan(ConeDeg * (Math.PI / 180)));
        return soilKgM3 * Math.PI * deepM / 3 * (below * below + below * above + above * above) * Footing.Gravity;
    }

    /// <summary>Share of a tie that counts: what is fastened to a building does not mind the soil.</summary>
    public static double TieShare(Standing? standing, Soil soil) => soil == Soil.Saturated && standing != Standing.Fastened ? SaturatedShare : 1;
}
