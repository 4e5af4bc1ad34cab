using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Friction of garden things on what they stand on (science.md 5.2, trade.md 2.3; M, ±20 %, rows marked C are ours).</summary>
public static class Friction
{
    /// <summary>Of wet over dry where only a dry figure is known: 0.4 / 0.5 on paving.</summary>
    private const double WetShare = 0.8;

    /// <summary>The coefficient dry or wet; a written one is dry and falls with wet as its surface does.</summary>
    public static double Of(double? written, Surface? surface, Soil soil)
    {
        var (dry, wet) = Usual(surface);
        if (soil == Soil.Dry) return written ?? dry;
        return written is { } own ? own * wet / dry : wet;
    }

    private static (double Dry, double Wet) Usual(Surface? surface) => surface switch
    {
        Surface.Paving => (0.5, 0.4),
        Surface.Tiles => (0.45, 0.3), // dry C
        Surface.Decking => (0.45, 0.25),
        Surface.Gravel => (0.55, 0.5), // wet C
        Surface.Soil => (0.5, 0.35), // C
        Surface.Grass => (0.45, 0.35), // dry C
        Surface.Rubber => (0.7, 0.6), // wet C
        _ => (0.35, 0.35 * WetShare),
    };
}
