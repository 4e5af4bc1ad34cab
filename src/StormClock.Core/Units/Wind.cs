namespace StormClock.Core.Units;

/// <summary>Conversions of speed and length; exact by definition of the units (1 n mi = 1852 m, 1 mi = 1609.344 m).</summary>
public static class Wind
{
    /// <summary>Metres per second in one knot.</summary>
    public const double MpsPerKt = 1852.0 / 3600.0;

    /// <summary>Metres per second in one mile per hour.</summary>
    public const double MpsPerMph = 1609.344 / 3600.0;

    /// <summary>Tropical-storm force: at this sustained wind (1-min, 10 m, marine) nobody works outside (product.md 2).</summary>
    public const double GaleKt = 34.0;

    public static double KtToMps(double kt) => kt * MpsPerKt;

    public static double MpsToKt(double mps) => mps / MpsPerKt;
}
