using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Units;

namespace StormClock.Service.Books;

/// <summary>A kind of quantity with the units it may be written in, each with its factor to SI (exact by definition).</summary>
/// <param name="PlainNumber">Factor of a number without unit; null when the unit must be written.</param>
internal sealed record QuantityKind(string Name, string Example, double? PlainNumber, IReadOnlyDictionary<string, double> Units)
{
    public static QuantityKind Mass { get; } = new("a mass", "18 kg or 40 lb", 1, new Dictionary<string, double>
    {
        ["kg"] = 1, ["g"] = 0.001, ["lb"] = 0.45359237, ["lbs"] = 0.45359237,
    });

    public static QuantityKind WindSpeed { get; } = new("a wind speed", "20 mph, 17 kt, 32 km/h or 9 m/s", null, new Dictionary<string, double>
    {
        ["m/s"] = 1, ["mph"] = Wind.MpsPerMph, ["kt"] = Wind.MpsPerKt, ["kn"] = Wind.MpsPerKt, ["knots"] = Wind.MpsPerKt, ["km/h"] = 1 / 3.6, ["kmh"] = 1 / 3.6,
    });
}

/// <summary>Reads a number with its unit, e.g. <c>40 lb</c> or <c>25 mph gust</c>.</summary>
internal static partial class Quantity
{
    /// <param name="trailing">A word that may stand behind the unit, e.g. <c>gust</c>; empty for none.</param>
    /// <returns>The value in SI; null with a reason when the text is no such quantity.</returns>
    public static double? Parse(string text, QuantityKind kind, string trailing, out string reason)
    {
        reason = $"must be {kind.Name} with its unit, e.g. {kind.Example}, not '{text}'";
        var parts = NumberUnitWord().Match(text);
        if (!parts.Success || Number(parts.Groups["number"].Value) is not { } number) return null;

        var word = parts.Groups["word"].Value;
        if (word.Length > 0 && word != trailing)
        {
            reason = $"'{word}' does not belong in '{text}'; {(trailing.Length > 0 ? $"here only the word '{trailing}' may follow the unit" : "write the number and the unit only")}";
            return null;
        }

        var unit = parts.Groups["unit"].Value;
        if (unit.Length == 0) return kind.PlainNumber is { } factor ? number * factor : null;
        if (kind.Units.TryGetValue(unit, out var known)) return number * known;

        reason = $"unknown unit '{unit}' in '{text}'; this is {kind.Name}: write {string.Join(", ", kind.Units.Keys)}";
        return null;
    }

    /// <summary>The number and the unit behind it, which may be empty; null when the text is no such pair.</summary>
    public static (double Number, string Unit)? Split(string text)
    {
        var parts = NumberUnitWord().Match(text);
        return parts.Success && parts.Groups["word"].Length == 0 && Number(parts.Groups["number"].Value) is { } number ? (number, parts.Groups["unit"].Value) : null;
    }

    /// <summary>A number with a decimal point; null for anything else, NaN and infinities included.</summary>
    public static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : null;

    [GeneratedRegex(@"^\s*(?<number>[-+]?[0-9]*\.?[0-9]+([eE][-+]?[0-9]+)?)\s*(?<unit>[A-Za-z/]*)\s*(?<word>[a-z]*)\s*$")]
    private static partial Regex NumberUnitWord();
}
