using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Loads;

namespace StormClock.Core.Worth;

/// <summary>How likely a thing fails where it stands.</summary>
public static class ItemChance
{
    /// <summary>Taken where nothing is known of how much wind a thing stands (C): as likely as not.</summary>
    public const double WhenUnknown = 0.5;

    /// <summary>
    /// The weaker of dry and soaked, because a cyclone brings both in its time: gusts come before rain, and rain before the worst of the wind. Null
    /// when nothing can be said.
    /// </summary>
    public static ItemStrength? Weakest(ItemShape shape, ItemBuild build)
    {
        var (dry, soaked) = (ItemLoads.Of(shape, build, Soil.Dry), ItemLoads.Of(shape, build, Soil.Saturated));
        return dry is null || soaked?.First.GustMps < dry.First.GustMps ? soaked : dry;
    }

    /// <summary>Gust at the thing over the gust at 10 m in the open.</summary>
    public static double ShareOfGust(ItemStrength strength, Terrain terrain, Exposure exposure) =>
        WindChain.GustAtHeight(1, strength.CentreHeightM, terrain, exposure);

    /// <summary>Mean chance over the peak gusts, 0 to 1.</summary>
    public static double OfFailing(ItemStrength? strength, PeakGusts peaks, Terrain terrain, Exposure exposure)
    {
        if (strength is null) return WhenUnknown;
        var share = ShareOfGust(strength, terrain, exposure);
        return peaks.At10MMps.Average(gust => strength.Modes.Max(mode => Fragility.Chance(gust * share, mode.GustMps, mode.Beta)));
    }

    /// <summary>The same for a thing that fails at a known gust where it stands, such as fruit on a tree.</summary>
    public static double OfFailingAt(double medianMps, double beta, double heightM, PeakGusts peaks, Terrain terrain, Exposure exposure)
    {
        var share = WindChain.GustAtHeight(1, heightM, terrain, exposure);
        return peaks.At10MMps.Average(gust => Fragility.Chance(gust * share, medianMps, beta));
    }
}
