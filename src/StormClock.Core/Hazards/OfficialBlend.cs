namespace StormClock.Core.Hazards;

/// <summary>
/// How the official chance of wind bends ours (science.md 3.6 and 4.1). The weights are provisional: they were picked on the storms that
/// they are scored on (D), and there help in one set and harm in the other (docs/hazards.md 8).
/// </summary>
public static class OfficialBlend
{
    /// <summary>Beyond this the two sources differ at 34 kt.</summary>
    public const double Apart = 0.20;

    /// <summary>Ours with the official chance mixed in; ours alone where there is none.</summary>
    public static double Chance(double windKt, double ours, double? official) =>
        official is { } known ? ours + OfficialWeight(windKt) * (known - ours) : ours;

    /// <summary>Both chances of 34 kt for the same place and time, 0 to 1.</summary>
    public static bool Differ(double ours, double official) => Math.Abs(ours - official) > Apart;

    private static double OfficialWeight(double windKt) => windKt switch { < 50 => 0, < 64 => 0.15, _ => 0.5 };
}
