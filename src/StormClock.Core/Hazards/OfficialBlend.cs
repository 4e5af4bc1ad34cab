namespace StormClock.Core.Hazards;

/// <summary>
/// How the official chance of wind bends ours (science.md 3.6 and 4.1). Averaging helped at 64 kt and a little at 50 kt, and made 34 kt
/// worse; the weights were picked on the same storms that they were scored on (D), so they are provisional.
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

    private static double OfficialWeight(double windKt) => windKt switch { < 50 => 0, < 64 => 0.3, _ => 0.5 };
}
