using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Core.Formats.Json;
using StormClock.Core.Formats.Notes;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Points;

/// <summary>Numbers with their unit as the forecasts in JSON write them. A unit that is not known is a fault, never a guess.</summary>
internal static partial class Quantity
{
    /// <summary>Names of units, without the prefix wmoUnit: or unit:, and what one of them is in m/s.</summary>
    private static readonly Dictionary<string, UnitScale> SpeedUnits = new(StringComparer.OrdinalIgnoreCase)
    {
        ["km_h-1"] = new(1 / 3.6),
        ["km/h"] = new(1 / 3.6),
        ["m_s-1"] = new(1),
        ["m/s"] = new(1),
        ["mph"] = new(Wind.MpsPerMph),
        ["kt"] = new(Wind.MpsPerKt),
    };

    /// <summary>What one of a unit of depth is in mm.</summary>
    private static readonly Dictionary<string, UnitScale> DepthUnits = new(StringComparer.OrdinalIgnoreCase) { ["mm"] = new(1), ["m"] = new(1000) };

    /// <summary>What one of a unit of chance is as a share; the forecasts leave the unit of chances out at times and mean percent (R).</summary>
    private static readonly Dictionary<string, UnitScale> ChanceUnits = new(StringComparer.OrdinalIgnoreCase) { ["percent"] = new(0.01), [""] = new(0.01) };

    private static readonly Dictionary<string, UnitScale> DegreeUnits = new(StringComparer.OrdinalIgnoreCase)
    {
        ["degC"] = new(1),
        ["C"] = new(1),
        ["degF"] = new(1 / 1.8, 32),
        ["F"] = new(1 / 1.8, 32),
    };

    /// <summary>More than any rain of one day on record (1,825 mm, La Réunion 1966, M).</summary>
    private const double MostRainMm = 3000;

    public static readonly QuantityKind Speed = new("a wind speed", SpeedUnits, NoteReader.MostGustMps);

    public static readonly QuantityKind Depth = new("a depth of rain", DepthUnits, MostRainMm);

    public static readonly QuantityKind Chance = new("a chance", ChanceUnits, 1);

    /// <summary>°C; colder or hotter (felt) than any on record is a mistake (M).</summary>
    public static readonly QuantityKind Temperature = new("a temperature", DegreeUnits, 90) { Least = -95 };

    /// <summary>
    /// A wind: "10 mph", "10 to 15 mph" (the upper end counts, science.md 4.1), or an object with unitCode and value or
    /// maxValue. Null value is null; what cannot be understood adds a fault.
    /// </summary>
    public static double? SpeedOf(JsonElement? written, string key, List<ReadFault> faults)
    {
        if (written is null) return null;
        if (written.Value.ValueKind == JsonValueKind.Object)
        {
            var number = written.Child("maxValue") ?? written.Child("value");
            return number is null ? null : Of(Speed, number, written.Child("unitCode").Text(), key, faults);
        }

        var words = SpeedWords().Match(written.Text() ?? "");
        if (words.Success) return Of(Speed, Number(words.Groups["high"].Success ? words.Groups["high"].Value : words.Groups["low"].Value), words.Groups["unit"].Value, key, faults);
        faults.Add(new(key, "is no wind such as \"10 to 15 mph\" or an object with unitCode and value"));
        return null;
    }

    public static double? Of(QuantityKind kind, JsonElement? number, string? unit, string key, List<ReadFault> faults) =>
        Of(kind, number.Number(), unit, key, faults);

    private static double? Of(QuantityKind kind, double? number, string? unit, string key, List<ReadFault> faults)
    {
        if (!kind.Units.TryGetValue(WithoutPrefix(unit), out var scale)) faults.Add(new(key, $"the unit \"{Shortened(unit)}\" is none of {kind.Name}; known are {string.Join(", ", kind.Units.Keys.Where(name => name.Length > 0))}"));
        else if (number is not { } value) faults.Add(new(key, "is no number"));
        else if (scale.Of(value) is var measured && (measured < kind.Least || measured > kind.Most)) faults.Add(new(key, FormattableString.Invariant($"{value:0.##} is beyond {kind.Name}; fetch it again")));
        else return measured;
        return null;
    }

    private static string WithoutPrefix(string? unit) => unit is null ? "" : unit[(unit.LastIndexOf(':') + 1)..];

    private static string Shortened(string? unit) => unit is null ? "" : unit.Length <= 30 ? unit : unit[..30] + "…";

    private static double Number(string digits) => double.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*(?<low>[0-9]{1,3}(?:\.[0-9]{1,3})?)(?:\s*(?:to|-)\s*(?<high>[0-9]{1,3}(?:\.[0-9]{1,3})?))?\s*(?<unit>mph|km/h|kt|m/s)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SpeedWords();
}

/// <summary>A kind of quantity: its name in words, its units, and the most of it that there can be.</summary>
internal sealed record QuantityKind(string Name, IReadOnlyDictionary<string, UnitScale> Units, double Most)
{
    /// <summary>The least that there can be.</summary>
    public double Least { get; init; }
}

/// <summary>How a unit is turned into the one that is kept.</summary>
/// <param name="Zero">What is nought in the unit that is kept.</param>
internal readonly record struct UnitScale(double Factor, double Zero = 0)
{
    public double Of(double value) => (value - Zero) * Factor;
}
