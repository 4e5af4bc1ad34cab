namespace StormClock.Core.Water;

/// <summary>What rain falls on before it runs off.</summary>
public enum Catchment { MetalRoof, ShingleRoof, TarAndGravelRoof, Paving, BareEarth, LawnOnSand, LawnOnClay }

/// <summary>How much water rain makes of an area. One millimetre on one square metre is one litre.</summary>
public static class Runoff
{
    /// <summary>The first of a rain wets the roof and does not run off, mm (science.md 6, M).</summary>
    public const double FirstFlushMm = 0.5;

    /// <summary>Share of the rain that runs off. Roofs: rain-harvest explainers (R2); the ground: tables of the rational method (M), the middle of their range.</summary>
    public static double Share(Catchment catchment) => catchment switch
    {
        Catchment.MetalRoof => 0.95,
        Catchment.ShingleRoof => 0.90,
        Catchment.TarAndGravelRoof => 0.80,
        Catchment.Paving => 0.90,
        Catchment.BareEarth => 0.45,
        Catchment.LawnOnSand => 0.10,
        Catchment.LawnOnClay => 0.30,
        _ => throw new ArgumentOutOfRangeException(nameof(catchment), catchment, null),
    };

    /// <summary>Litres that run off an area seen from above; nothing is taken off for the first flush.</summary>
    public static double Litres(double rainMm, double areaM2, double share) => rainMm * areaM2 * share;

    /// <summary>Rain that fills what is still free, mm; infinite without a catchment.</summary>
    public static double MmToOverflow(double freeL, double areaM2, double share) =>
        areaM2 * share > 0 ? freeL / (areaM2 * share) : double.PositiveInfinity;
}
