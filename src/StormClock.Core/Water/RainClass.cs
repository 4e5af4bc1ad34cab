namespace StormClock.Core.Water;

/// <summary>How hard it rains: the American meteorology glossary (R in trade.md 6), with "violent" above 50 mm/h (M).</summary>
public enum RainIntensity { None, Light, Moderate, Heavy, Violent }

/// <summary>Classes and planning rates of rain.</summary>
public static class RainClass
{
    public static RainIntensity Of(double mmPerHour) => mmPerHour switch
    {
        <= 0 => RainIntensity.None,
        <= 2.5 => RainIntensity.Light,
        <= 7.6 => RainIntensity.Moderate,
        <= 50 => RainIntensity.Heavy,
        _ => RainIntensity.Violent,
    };

    /// <summary>The hardest hour to plan for, mm (science.md 6, C): the largest hour forecast, a quarter of the largest six hours, or 0.12 of a day.</summary>
    public static double PeakHourMm(double largestHourMm, double largestSixHoursMm, double dayMm) =>
        Math.Max(largestHourMm, Math.Max(0.25 * largestSixHoursMm, 0.12 * dayMm));
}
