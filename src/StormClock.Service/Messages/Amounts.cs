using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Service.Messages;

/// <summary>Quantities in the units that a garden's people read.</summary>
public static class Amounts
{
    private const double FeetPerMetre = 1 / 0.3048;
    private const double PoundsPerKg = 1 / 0.45359237;
    private const double GallonsPerLitre = 1 / 3.785411784;
    private const double SquareFeetPerM2 = FeetPerMetre * FeetPerMetre;
    private const double CubicFeetPerM3 = SquareFeetPerM2 * FeetPerMetre;

    /// <summary>Takes up noise of binary fractions, so that 3 stays 3 when rounded up.</summary>
    private const double Noise = 1e-9;

    /// <summary>Tropical-storm force, 34 kt sustained, in the garden's unit; to the whole number a forecast uses.</summary>
    public static string GaleSustained(UnitSystem units) => units switch
    {
        UnitSystem.UsCustomary => "39 mph sustained wind",
        UnitSystem.Metric => "63 km/h sustained wind",
        _ => "34 kt sustained wind",
    };

    /// <summary>
    /// A quantity of a material, rounded up so that nobody buys too little: whole feet, pounds and gallons, tenths of the
    /// metric units. Pieces are a bare number; the book's other units (roll, bag) stay as written.
    /// </summary>
    public static string Of(double quantity, string unit, UnitSystem units)
    {
        var (amount, name, step) = (units, unit) switch
        {
            (UnitSystem.UsCustomary, "m") => (quantity * FeetPerMetre, "ft", 1.0),
            (UnitSystem.UsCustomary, "kg") => (quantity * PoundsPerKg, "lb", 1.0),
            (UnitSystem.UsCustomary, "l") => (quantity * GallonsPerLitre, "gal", 1.0),
            (_, "each") => (quantity, "", 1.0),
            _ => (quantity, Words.Token(unit), 0.1),
        };
        var rounded = Math.Ceiling((amount / step) - Noise) * step;
        return string.Create(CultureInfo.InvariantCulture, $"{rounded:0.#} {name}").TrimEnd().Replace(' ', Plain.Unbroken);
    }

    /// <summary>A wind in the garden's unit, to the whole number.</summary>
    public static string Speed(double mps, UnitSystem units)
    {
        var (value, name) = units switch
        {
            UnitSystem.UsCustomary => (mps / Wind.MpsPerMph, "mph"),
            UnitSystem.Metric => (mps * 3.6, "km/h"),
            _ => (mps / Wind.MpsPerKt, "kt"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{value:0}{Plain.Unbroken}{name}");
    }

    /// <summary>A height or depth: feet to a tenth, metres to a hundredth.</summary>
    public static string Height(double metres, UnitSystem units) => units == UnitSystem.UsCustomary
        ? string.Create(CultureInfo.InvariantCulture, $"{metres * FeetPerMetre:0.0}{Plain.Unbroken}ft")
        : string.Create(CultureInfo.InvariantCulture, $"{metres:0.00}{Plain.Unbroken}m");

    /// <summary>Water in a tank, to the whole gallon or litre.</summary>
    public static string Water(double litres, UnitSystem units) => units == UnitSystem.UsCustomary
        ? string.Create(CultureInfo.InvariantCulture, $"{litres * GallonsPerLitre:0}{Plain.Unbroken}gal")
        : string.Create(CultureInfo.InvariantCulture, $"{litres:0}{Plain.Unbroken}l");

    /// <summary>Depth of rain: inches to a tenth, whole millimetres.</summary>
    public static string Rain(double mm, UnitSystem units) => units == UnitSystem.UsCustomary
        ? string.Create(CultureInfo.InvariantCulture, $"{mm / 25.4:0.0}{Plain.Unbroken}in")
        : string.Create(CultureInfo.InvariantCulture, $"{mm:0}{Plain.Unbroken}mm");

    /// <summary>Floor of a store: tenths of m², whole square feet.</summary>
    public static string Floor(double squareMetres, UnitSystem units) => units == UnitSystem.UsCustomary
        ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres * SquareFeetPerM2:0}{Plain.Unbroken}sq{Plain.Unbroken}ft")
        : string.Create(CultureInfo.InvariantCulture, $"{squareMetres:0.#}{Plain.Unbroken}m²");

    /// <summary>Room of a store: tenths of m³, whole cubic feet.</summary>
    public static string Room(double cubicMetres, UnitSystem units) => units == UnitSystem.UsCustomary
        ? string.Create(CultureInfo.InvariantCulture, $"{cubicMetres * CubicFeetPerM3:0}{Plain.Unbroken}cu{Plain.Unbroken}ft")
        : string.Create(CultureInfo.InvariantCulture, $"{cubicMetres:0.#}{Plain.Unbroken}m³");

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
    public static string Chance(double chance) => chance switch
    {
        < 0.01 => "less than 1 in 100",
        > 0.99 => "more than 99 in 100",
        _ => $"{Math.Round(chance * 100):0} in 100",
    };
}
