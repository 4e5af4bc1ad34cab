using System.Globalization;
using System.Text.RegularExpressions;

namespace StormClock.Service.Books;

/// <summary>Reads a number with its unit, e.g. <c>40 lb</c>, <c>6 ft 2 in</c> or <c>25 mph gust</c>.</summary>
internal static partial class Quantity
{
    /// <summary>Hides what conversion adds behind the last digit anybody means: 6 ft are 1.8288 m, not 1.8288000000000002.</summary>
    private const int DecimalsKept = 12;

    /// <param name="trailing">A word that may stand behind the unit, e.g. <c>gust</c>; empty for none.</param>
    /// <returns>The value in SI; null with a reason when the text is no such quantity.</returns>
    public static double? Parse(string text, QuantityKind kind, string trailing, out string reason)
    {
        reason = HasComma(text) ?? $"must be {kind.Name} with its unit, e.g. {kind.Example}, not '{text}'";
        if (kind.TakesFeetAndInches && FeetAndInches(text) is { } length) return length;

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
        if (kind.Units.TryGetValue(unit, out var known)) return Converted(number, known);

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

    /// <summary>What to say of a comma inside a number; null when there is none. It may part decimals or thousands, so it is never guessed at.</summary>
    public static string? HasComma(string text) =>
        NumberComma().IsMatch(text) ? $"has a comma in the number '{text}'; write a point before decimals and nothing between thousands, e.g. 1.8 or 1200" : null;

    private static double? FeetAndInches(string text)
    {
        var parts = FeetInches().Match(text);
        if (!parts.Success || Number(parts.Groups["feet"].Value) is not { } feet || Number(parts.Groups["inches"].Value) is not { } inches || inches >= 12) return null;

        var length = Converted(feet * 12 + inches, QuantityKind.MetresPerInch);
        return parts.Groups["sign"].Value == "-" ? -length : length;
    }

    private static double Converted(double number, double factor) => factor == 1 ? number : Math.Round(number * factor, DecimalsKept);

    [GeneratedRegex(@"^\s*(?<number>[-+]?[0-9]*\.?[0-9]+([eE][-+]?[0-9]+)?)\s*(?<unit>[A-Za-z/%]*)\s*(?<word>[a-z]*)\s*$")]
    private static partial Regex NumberUnitWord();

    [GeneratedRegex(@"^\s*(?<sign>[-+]?)(?<feet>[0-9]+)\s*ft\s+(?<inches>[0-9]*\.?[0-9]+)\s*in\s*$")]
    private static partial Regex FeetInches();

    [GeneratedRegex(@"[0-9],[0-9]")]
    private static partial Regex NumberComma();
}
