using System.Runtime.CompilerServices;

namespace StormClock.Core.Hazards;

/// <summary>
/// Sustained wind by distance from the centre in one direction: log-log lines through the radii of 64, 50 and 34 kt that are
/// given (science.md 2.1, D). The calm of the eye is left out on purpose: inside the radius of maximum wind it is the maximum.
/// </summary>
public readonly struct RadialProfile
{
    // Outer decay exponents and where they change (science.md 2.1, C; observed 0.4 to 0.6 near the storm, M).
    private const double NearOuterExponent = 0.5;
    private const double FarOuterExponent = 0.8;
    private const double FarOuterFrom = 2.5;

    private const double LeastMaxWindRadiusNmi = 8;
    private const double MaxWindRadiusOf64 = 0.6;
    private const double KmPerNmi = 1.852;

    // Ring 0 is the maximum wind; the others follow outward.
    private readonly Rings rings;
    private readonly int count;

    private RadialProfile(Rings rings, int count)
    {
        this.rings = rings;
        this.count = count;
    }

    /// <summary>A profile through the radii of one direction, n mi; 0 where that wind does not occur or is not known.</summary>
    /// <param name="maxKt">Maximum sustained wind of the storm, knots.</param>
    /// <param name="latDeg">Latitude, for the radius of maximum wind where 64 kt does not occur.</param>
    public static RadialProfile Through(double radius34Nmi, double radius50Nmi, double radius64Nmi, double maxKt, double latDeg)
    {
        var rings = default(Rings);
        var count = 1;
        Add(ref rings, ref count, radius64Nmi, 64);
        Add(ref rings, ref count, radius50Nmi, 50);
        Add(ref rings, ref count, radius34Nmi, 34);

        var radius = radius64Nmi > 0 ? Math.Max(LeastMaxWindRadiusNmi, MaxWindRadiusOf64 * radius64Nmi) : WeakStormMaxWindRadiusNmi(latDeg);
        var inner = count > 1 ? rings[1] : new Ring(double.PositiveInfinity, 0);
        rings[0] = new(Math.Min(radius, 0.9 * inner.RadiusNmi), Math.Max(maxKt, inner.WindKt));
        return new(rings, count);
    }

    /// <summary>Sustained wind at a distance, knots.</summary>
    public double WindKt(double distanceNmi)
    {
        if (distanceNmi <= rings[0].RadiusNmi) return rings[0].WindKt;
        for (var i = 1; i < count; i++)
        {
            if (distanceNmi <= rings[i].RadiusNmi)
                return rings[i - 1].WindKt * Math.Pow(rings[i - 1].RadiusNmi / distanceNmi, Exponent(i));
        }

        var edge = rings[count - 1];
        var bend = FarOuterFrom * edge.RadiusNmi;
        return distanceNmi <= bend
            ? edge.WindKt * Math.Pow(edge.RadiusNmi / distanceNmi, NearOuterExponent)
            : WindAtBend(edge) * Math.Pow(bend / distanceNmi, FarOuterExponent);
    }

    /// <summary>How far wind of at least this speed reaches, n mi; 0 when the storm is weaker.</summary>
    public double RadiusNmi(double windKt)
    {
        if (windKt > rings[0].WindKt) return 0;
        for (var i = 1; i < count; i++)
        {
            if (windKt < rings[i].WindKt) continue;
            var exponent = Exponent(i);
            return exponent == 0 ? rings[i].RadiusNmi : rings[i].RadiusNmi * Math.Pow(rings[i].WindKt / windKt, 1 / exponent);
        }

        var edge = rings[count - 1];
        var atBend = WindAtBend(edge);
        return windKt >= atBend
            ? edge.RadiusNmi * Math.Pow(edge.WindKt / windKt, 1 / NearOuterExponent)
            : FarOuterFrom * edge.RadiusNmi * Math.Pow(atBend / windKt, 1 / FarOuterExponent);
    }

    private static double WindAtBend(Ring edge) => edge.WindKt * Math.Pow(FarOuterFrom, -NearOuterExponent);

    /// <summary>Decay exponent between ring i − 1 and ring i.</summary>
    private double Exponent(int i) =>
        Math.Log(rings[i - 1].WindKt / rings[i].WindKt) / Math.Log(rings[i].RadiusNmi / rings[i - 1].RadiusNmi);

    /// <summary>Adds a ring outward; radii that are equal or cross are set 1 n mi apart.</summary>
    private static void Add(ref Rings rings, ref int count, double radiusNmi, double windKt)
    {
        if (!(radiusNmi > 0)) return;
        var least = count > 1 ? rings[count - 1].RadiusNmi + 1 : radiusNmi;
        rings[count++] = new(Math.Max(radiusNmi, least), windKt);
    }

    /// <summary>Vickery and Wadhera 2008 (M) without the pressure term, which is small in storms that lack 64 kt wind.</summary>
    private static double WeakStormMaxWindRadiusNmi(double latDeg) =>
        Math.Max(LeastMaxWindRadiusNmi, Math.Exp(3.015 + 0.0337 * Math.Abs(latDeg)) / KmPerNmi);

    private readonly record struct Ring(double RadiusNmi, double WindKt);

    [InlineArray(4)]
    private struct Rings
    {
        private Ring first;
    }
}
