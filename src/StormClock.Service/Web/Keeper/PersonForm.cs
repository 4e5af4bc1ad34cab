using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime.Text;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Keeper;

/// <summary>
/// A person as the keeper's form writes them: all that a book may say of a person. Nothing is cut short: what is too long for a book is refused,
/// and stays in its field. Hours come a row each, as <c>hours.0.mon</c>, <c>hours.0.date</c>, <c>hours.0.from</c>, <c>hours.0.to</c>.
/// </summary>
internal static partial class PersonForm
{
    /// <summary>Characters of one field, as in a book.</summary>
    public const int Longest = 400;

    /// <summary>Fields that are one text, in the page's order.</summary>
    public static IReadOnlyList<string> Fields { get; } = ["name", "role", "email", "second", "days_off", "lift_kg", "ladder", "language", "clock", "units"];

    private static readonly string[] Times = ["date", "from", "to"];

    /// <summary>What stands in the fields before anything is typed.</summary>
    public static IReadOnlyDictionary<string, string> Blank { get; } = new Dictionary<string, string> { ["role"] = Tokens.Of(PersonRole.Helper), ["ladder"] = Tokens.Of(LadderUse.WithSomebody) };

    /// <summary>The fields of ours that a form brought.</summary>
    public static IReadOnlyDictionary<string, string> Typed(IFormCollection form) =>
        form.Keys.Where(key => Fields.Contains(key) || HoursKey().IsMatch(key)).ToDictionary(key => key, key => form[key].ToString());

    /// <param name="before">The person who is changed; null for a new one.</param>
    public static ReadResult<Person> Read(GardenBook book, Person? before, string id, IReadOnlyDictionary<string, string> typed)
    {
        // The reader would take the whole book for no text, and say so.
        if (typed.Where(pair => !IsText(pair.Value)).Select(pair => ReadFault.At(1, $"'{pair.Key}' must be one line of plain text")).ToList() is { Count: > 0 } odd) return ReadResult.Bad<Person>(odd);

        var lists = new Dictionary<string, IReadOnlyList<string>>();
        if (typed.TryGetValue("days_off", out var days)) lists["days_off"] = [.. Between().Split(days).Where(day => day.Length > 0).Select(day => EntryForm.Text(day).Text)];
        if (typed.Keys.Any(key => HoursKey().IsMatch(key))) lists["hours"] = [.. Rows(typed).Select(row => Hours(typed, row)).OfType<string>()];
        var others = book with { People = [.. book.People.Where(person => person.Id != id)] };
        var texts = typed.Where(pair => Fields.Contains(pair.Key) && pair.Key != "days_off").ToDictionary();
        var read = EntryForm.Read(others, "people", id, before is null ? null : GardenWriter.Of(before, null, null), texts, lists);
        return read.Value is { } good ? good.People[^1] : ReadResult.Bad<Person>(read.Faults);
    }

    /// <summary>What the book says of a person, by field; a language and clock that are the garden's are left empty.</summary>
    public static IReadOnlyDictionary<string, string> Of(Person person, GardenBook book)
    {
        var typed = new Dictionary<string, string>
        {
            ["name"] = person.Name,
            ["role"] = Tokens.Of(person.Role),
            ["email"] = person.Email ?? "",
            ["second"] = person.SecondEmail ?? "",
            ["days_off"] = string.Join(", ", person.DaysOff.Select(LocalDatePattern.Iso.Format)),
            ["lift_kg"] = ItemText.Number(person.LiftKg),
            ["ladder"] = Tokens.Of(GardenWriter.Ladder(person)),
            ["language"] = person.Language == book.Language ? "" : Token(Tokens.Languages, person.Language),
            ["clock"] = person.Clock == book.Clock ? "" : Token(Tokens.Clocks, person.Clock),
            ["units"] = person.Units is { } units ? Token(Tokens.Units, units) : "",
        };
        foreach (var (row, hours) in person.Hours.Index())
        {
            foreach (var day in hours.Days) typed[$"hours.{row}.{Token(Tokens.Weekdays, day)}"] = "1";
            typed[$"hours.{row}.date"] = hours.Date is { } date ? LocalDatePattern.Iso.Format(date) : "";
            typed[$"hours.{row}.from"] = hours.From.ToString("HH:mm", CultureInfo.InvariantCulture);
            typed[$"hours.{row}.to"] = hours.To.ToString("HH:mm", CultureInfo.InvariantCulture);
        }

        return typed;
    }

    /// <summary>The rows of hours in which something is typed, in their order.</summary>
    public static IReadOnlyList<int> Rows(IReadOnlyDictionary<string, string> typed) =>
        [.. typed.Where(pair => pair.Value.Trim().Length > 0).Select(pair => HoursKey().Match(pair.Key)).Where(match => match.Success)
            .Select(match => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)).Distinct().Order()];

    /// <summary>Row by row as a book writes hours; null for a row in which nothing is typed.</summary>
    private static string? Hours(IReadOnlyDictionary<string, string> typed, int row)
    {
        string Of(string part) => typed.GetValueOrDefault($"hours.{row}.{part}", "").Trim();
        var days = Tokens.Weekdays.Keys.Where(day => Of(day).Length > 0).ToList();
        List<string> parts = days.Count > 0 ? [$"days: [{string.Join(", ", days)}]"] : [];
        parts.AddRange(Times.Where(part => Of(part).Length > 0).Select(part => $"{part}: {EntryForm.Text(Of(part)).Text}"));
        return parts.Count > 0 ? $"{{{string.Join(", ", parts)}}}" : null;
    }

    private static bool IsText(string typed) => !typed.ReplaceLineEndings(" ").Any(letter => char.IsControl(letter) || letter == '\uFFFD');

    private static string Token<T>(IReadOnlyDictionary<string, T> tokens, T value)
        where T : struct => tokens.First(pair => pair.Value.Equals(value)).Key;

    [GeneratedRegex(@"^hours\.([0-9]|[1-9][0-9])\.(mon|tue|wed|thu|fri|sat|sun|date|from|to)\z")]
    private static partial Regex HoursKey();

    [GeneratedRegex(@"[\s,;]+")]
    private static partial Regex Between();
}
