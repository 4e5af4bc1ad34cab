using System.Globalization;
using NodaTime.Text;

namespace StormClock.Service.Books;

/// <summary>Numbers, choices, quantities and times.</summary>
internal sealed partial class YamlFields
{
    private static readonly LocalTimePattern ClockTime = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    /// <param name="otherwise">Taken when the key is absent; null makes it required.</param>
    public double Number(string key, double least, double most, double? otherwise, string example)
    {
        if (ValueOf(key, otherwise is null, example) is not { } text) return otherwise ?? least;
        if (Quantity.Number(text) is { } number && number >= least && number <= most) return number;

        Fault(key, Quantity.HasComma(Shown(text)) ?? $"must be a number from {Plain(least)} to {Plain(most)}, not '{Shown(text)}'; write e.g. {key}: {example}");
        return least;
    }

    /// <inheritdoc cref="Number"/>
    public int Whole(string key, int least, int most, int? otherwise, string example)
    {
        if (ValueOf(key, otherwise is null, example) is not { } text) return otherwise ?? least;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most) return number;

        Fault(key, Quantity.HasComma(Shown(text)) ?? $"must be a whole number from {least} to {most}, not '{Shown(text)}'; write e.g. {key}: {example}");
        return least;
    }

    /// <summary>A quantity in SI; null when absent or wrong.</summary>
    /// <param name="most">In SI.</param>
    /// <param name="trailing">A word that may follow the unit.</param>
    public double? Amount(string key, QuantityKind kind, double least, double most, string trailing = "")
    {
        if (OptionalText(key, kind.Example) is not { Length: > 0 } text) return null;
        if (Quantity.Parse(text, kind, trailing, out var reason) is not { } amount)
        {
            Fault(key, reason);
            return null;
        }

        if (amount >= least && amount <= most) return amount;

        var (unit, factor) = kind.Units.First();
        Fault(key, $"must lie between {Plain(least / factor)} and {Plain(most / factor)} {unit}, not '{Shown(text)}'; write e.g. {kind.Example}");
        return null;
    }

    /// <summary>A number that may be left out; null when absent or wrong.</summary>
    public double? OptionalNumber(string key, double least, double most, string example) => Has(key) ? Number(key, least, most, null, example) : null;

    /// <inheritdoc cref="OptionalNumber"/>
    public int? OptionalWhole(string key, int least, int most, string example) => Has(key) ? Whole(key, least, most, null, example) : null;

    /// <param name="otherwise">Taken when the key is absent; null makes it required.</param>
    public T Choice<T>(string key, IReadOnlyDictionary<string, T> tokens, T? otherwise)
        where T : struct
    {
        var example = tokens.Keys.First();
        if (ValueOf(key, otherwise is null, example) is not { } text) return otherwise ?? default;
        if (tokens.TryGetValue(text, out var chosen)) return chosen;

        Fault(key, $"is '{Shown(text)}', which is not known; {Nearest.Hint(text, [.. tokens.Keys])}");
        return otherwise ?? default;
    }

    /// <summary>A choice that may be left out; null when absent.</summary>
    public T? OptionalChoice<T>(string key, IReadOnlyDictionary<string, T> tokens)
        where T : struct => Has(key) ? Choice<T>(key, tokens, null) : null;

    public LocalTime Time(string key, string example)
    {
        if (ValueOf(key, true, example) is not { } text) return default;
        if (ClockTime.Parse(text) is { Success: true } time) return time.Value;

        Fault(key, $"must be a time of day from 0:00 to 23:59, not '{Shown(text)}'; write e.g. {key}: {example}");
        return default;
    }

    public LocalDate? Date(string key) => OptionalText(key, "2027-09-22") is { Length: > 0 } text ? DateOf(key, new Placed(text, LineOf(key))) : null;

    public LocalDate? DateOf(string key, Placed word)
    {
        if (LocalDatePattern.Iso.Parse(word.Text) is { Success: true } date) return date.Value;

        faults.Add(word.Line, $"'{key}' of {Subject} must be a date such as 2027-09-22, not '{Shown(word.Text)}'");
        return null;
    }

    public DateTimeZone Zone(string key)
    {
        var name = Text(key, "America/New_York");
        if (name.Length == 0) return DateTimeZone.Utc;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is { } zone) return zone;

        var meant = Nearest.To(name, DateTimeZoneProviders.Tzdb.Ids);
        Fault(key, $"is '{Shown(name)}', which is no time zone; {(meant is null ? "write it by name, e.g. America/New_York" : $"did you mean '{meant}'?")}");
        return DateTimeZone.Utc;
    }

    /// <summary>The text of a key; null when absent or already told as a fault.</summary>
    private string? ValueOf(string key, bool required, string example) =>
        (required ? Text(key, example) : OptionalText(key, example)) is { Length: > 0 } text ? text : null;

    private static string Plain(double number) => number.ToString(Math.Abs(number) < 1 ? "0.###" : "0.##", CultureInfo.InvariantCulture);
}
