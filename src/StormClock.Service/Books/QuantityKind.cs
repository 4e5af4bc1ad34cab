using StormClock.Core.Units;

namespace StormClock.Service.Books;

/// <summary>A kind of quantity with the units it may be written in, each with its factor to SI (exact by definition).</summary>
/// <param name="PlainNumber">Factor of a number without unit; null when the unit must be written.</param>
/// <param name="Units">The first one is used to tell bounds.</param>
internal sealed record QuantityKind(string Name, string Example, double? PlainNumber, IReadOnlyDictionary<string, double> Units)
{
    public const double MetresPerInch = 0.0254;

    private static readonly Dictionary<string, double> LengthUnits = new()
    {
        ["m"] = 1, ["cm"] = 0.01, ["mm"] = 0.001, ["ft"] = 12 * MetresPerInch, ["in"] = MetresPerInch,
    };

    /// <summary>Feet and inches may be written together, e.g. <c>6 ft 2 in</c>.</summary>
    public bool TakesFeetAndInches { get; private init; }

    public static QuantityKind Mass { get; } = new("a mass", "18 kg or 40 lb", 1, new Dictionary<string, double>
    {
        ["kg"] = 1, ["g"] = 0.001, ["lb"] = 0.45359237, ["lbs"] = 0.45359237,
    });

    public static QuantityKind WindSpeed { get; } = new("a wind speed", "20 mph, 17 kt, 32 km/h or 9 m/s", null, new Dictionary<string, double>
    {
        ["m/s"] = 1, ["mph"] = Wind.MpsPerMph, ["kt"] = Wind.MpsPerKt, ["kn"] = Wind.MpsPerKt, ["knots"] = Wind.MpsPerKt, ["km/h"] = 1 / 3.6, ["kmh"] = 1 / 3.6,
    });

    /// <summary>A number without unit would be taken for feet by one reader and for metres by another: its unit must be written.</summary>
    public static QuantityKind Length { get; } = new("a length", "6 ft, 6 ft 2 in or 1.8 m", null, LengthUnits) { TakesFeetAndInches = true };

    /// <summary>Where the book is metric a number without unit is metres.</summary>
    public static QuantityKind MetricLength { get; } = new("a length", "1.8 m or 40 cm", 1, LengthUnits) { TakesFeetAndInches = true };

    /// <summary>The gallon is the US one: 231 cubic inches.</summary>
    public static QuantityKind Volume { get; } = new("a volume", "60 l or 55 gal", null, new Dictionary<string, double>
    {
        ["l"] = 1, ["L"] = 1, ["gal"] = 3.785411784,
    });

    public static QuantityKind Force { get; } = new("a force", "500 N, 2 kN, 110 lbf or 50 kgf", null, new Dictionary<string, double>
    {
        ["N"] = 1, ["kN"] = 1000, ["lbf"] = 0.45359237 * 9.80665, ["kgf"] = 9.80665,
    });

    public static QuantityKind Share { get; } = new("a share", "40 % or 0.4", 1, new Dictionary<string, double> { ["%"] = 0.01 });
}
