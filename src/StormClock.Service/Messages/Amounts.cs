using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Core.Units;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>Quantities in the units that a garden's people read.</summary>
public static class Amounts
{
    private const double FeetPerMetre = 1 / 0.3048;
    private const double MetresPerMile = 1609.344;
    private const double MetresPerNmi = 1852;
    private const double PoundsPerKg = 1 / 0.45359237;
    private const double GallonsPerLitre = 1 / 3.785411784;
    private const double SquareFeetPerM2 = FeetPerMetre * FeetPerMetre;
    private const double CubicFeetPerM3 = SquareFeetPerM2 * FeetPerMetre;

    /// <summary>Takes up noise of binary fractions, so that 3 stays 3 when rounded up.</summary>
    private const double Noise = 1e-9;

    /// <summary>Tropical-storm force, 34 kt sustained, in the garden's unit; to the whole number a forecast uses.</summary>
    public static string GaleSustained(Speech speech) => speech.Units switch
    {
        UnitSystem.UsCustomary => speech.Say("gale.mph"),
        UnitSystem.Metric => speech.Say("gale.km/h"),
        _ => speech.Say("gale.kt"),
    };

    /// <summary>
    /// A quantity of a material, rounded up so that nobody buys too little: whole feet, pounds and gallons, tenths of the
    /// metric units. Pieces are a bare number; the book's other units (roll, bag) stay as written.
    /// </summary>
    public static string Of(double quantity, string unit, Speech speech)
    {
        var (amount, name, step) = (speech.Units, unit) switch
        {
            (UnitSystem.UsCustomary, "m") => (quantity * FeetPerMetre, "ft", 1.0),
            (UnitSystem.UsCustomary, "kg") => (quantity * PoundsPerKg, "lb", 1.0),
            (UnitSystem.UsCustomary, "l") => (quantity * GallonsPerLitre, "gal", 1.0),
            (_, "each") => (quantity, "each", 1.0),
            _ => (quantity, unit, 0.1),
        };
        return Measured(Math.Max(0, Math.Ceiling((amount / step) - Noise)) * step, "0.#", name, speech);
    }

    /// <summary>A wind in the garden's unit, to the whole number.</summary>
    public static string Speed(double mps, Speech speech) => speech.Units switch
    {
        UnitSystem.UsCustomary => Measured(mps / Wind.MpsPerMph, "0", "mph", speech),
        UnitSystem.Metric => Measured(mps * 3.6, "0", "km/h", speech),
        _ => Measured(mps / Wind.MpsPerKt, "0", "kt", speech),
    };

    /// <summary>A way over land or sea, to the next five of its unit: a centre told to a tenth of a degree allows no more.</summary>
    public static string Way(double nmi, Speech speech) => speech.Units switch
    {
        UnitSystem.UsCustomary => Measured(Fives(nmi * MetresPerNmi / MetresPerMile), "0", "mi", speech),
        UnitSystem.Metric => Measured(Fives(nmi * MetresPerNmi / 1000), "0", "km", speech),
        _ => Measured(Fives(nmi), "0", "nmi", speech),
    };

    private static double Fives(double value) => Math.Max(5, Math.Round(value / 5) * 5);

    /// <summary>A height or depth: feet to a tenth, metres to a hundredth.</summary>
    public static string Height(double metres, Speech speech) =>
        IsUs(speech) ? Measured(metres * FeetPerMetre, "0.0", "ft", speech) : Measured(metres, "0.00", "m", speech);

    /// <summary>Water in a tank, to the whole gallon or litre.</summary>
    public static string Water(double litres, Speech speech) =>
        IsUs(speech) ? Measured(litres * GallonsPerLitre, "0", "gal", speech) : Measured(litres, "0", "l", speech);

    /// <summary>Depth of rain: inches to a tenth, whole millimetres.</summary>
    public static string Rain(double mm, Speech speech) =>
        IsUs(speech) ? Measured(mm / 25.4, "0.0", "in", speech) : Measured(mm, "0", "mm", speech);

    /// <summary>Floor of a store: tenths of m², whole square feet.</summary>
    public static string Floor(double squareMetres, Speech speech) =>
        IsUs(speech) ? Measured(squareMetres * SquareFeetPerM2, "0", "sq-ft", speech) : Measured(squareMetres, "0.#", "m2", speech);

    /// <summary>Room of a store: tenths of m³, whole cubic feet.</summary>
    public static string Room(double cubicMetres, Speech speech) =>
        IsUs(speech) ? Measured(cubicMetres * CubicFeetPerM3, "0", "cu-ft", speech) : Measured(cubicMetres, "0.#", "m3", speech);

    /// <summary>A load, rounded up.</summary>
    public static string Mass(double kg, Speech speech) =>
        IsUs(speech) ? Measured(Math.Ceiling(kg * PoundsPerKg), "0", "lb", speech) : Measured(Math.Ceiling(kg), "0", "kg", speech);

    /// <summary>Hours and minutes, whose signs are the same in every language (SI).</summary>
    public static string Minutes(int minutes)
    {
        var text = minutes switch
        {
            < 60 => $"{minutes} min",
            _ when minutes % 60 == 0 => $"{minutes / 60} h",
            _ => $"{minutes / 60} h {minutes % 60} min",
        };
        return text.Replace(' ', Plain.Unbroken);
    }

    /// <summary>A chance as people count: 35 in 100.</summary>
    public static string Chance(double chance, Speech speech) => chance switch
    {
        < 0.01 => speech.Say("chance.least"),
        > 0.99 => speech.Say("chance.most"),
        _ => speech.Say("chance", ("share", (int)Math.Round(chance * 100))),
    };

    private static bool IsUs(Speech speech) => speech.Units == UnitSystem.UsCustomary;

    private static string Measured(double value, string format, string unit, Speech speech)
    {
        var number = value.ToString(format, CultureInfo.InvariantCulture);
        return $"{number} {Words.Unit(unit, number == "1" ? 1 : 2, speech)}".TrimEnd().Replace(' ', Plain.Unbroken);
    }
}
