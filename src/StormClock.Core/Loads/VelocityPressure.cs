namespace StormClock.Core.Loads;

/// <summary>Pressure of the wind at a thing: q = 0.613 V², air of 1.226 kg/m³ (form of ASCE 7-16 eq. 26.10-1, R2; science.md 5.1).</summary>
public static class VelocityPressure
{
    /// <summary>Half the density of air, kg/m³. The directionality factor of the code belongs to its load factors and is 1 here (C).</summary>
    public const double PaPerMps2 = 0.613;

    /// <summary>Pa, for a gust in m/s.</summary>
    public static double AtPa(double gustMps) => PaPerMps2 * gustMps * gustMps;

    /// <summary>The gust, m/s, of a pressure in Pa.</summary>
    public static double GustMps(double pressurePa) => Math.Sqrt(pressurePa / PaPerMps2);
}
