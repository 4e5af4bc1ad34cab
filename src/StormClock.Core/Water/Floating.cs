namespace StormClock.Core.Water;

/// <summary>What water lifts (science.md 6): a thing floats once the water it stands in weighs more than it does.</summary>
public static class Floating
{
    /// <summary>Mass of a cubic metre of fresh water, kg; sea water lifts 3 % more.</summary>
    public const double WaterKgPerM3 = 1000;

    /// <summary>Depth above the foot at which an upright thing with straight sides floats, m; null when it is too low for that.</summary>
    /// <param name="heightM">Over its top it fills and does not float.</param>
    public static double? DepthM(double massKg, double baseM2, double heightM) =>
        massKg / (WaterKgPerM3 * baseM2) is var depth && depth < heightM ? depth : null;
}
