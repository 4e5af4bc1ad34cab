using System.Text.Json;
using StormClock.Core.Garden;

namespace StormClock.Service.Wording;

/// <summary>How one person is spoken to: language, clock and units.</summary>
public sealed record Speech(Language Language, ClockForm Clock, UnitSystem Units)
{
    private WordList Words => WordList.Of(Language);

    /// <summary>The language as BCP 47 names it.</summary>
    public string Tag => Words.Tag;

    /// <summary>Log, commands and health speak English, with the garden's units.</summary>
    public static Speech English(UnitSystem units) => new(Language.English, ClockForm.Hours24, units);

    /// <summary>What is for nobody alone.</summary>
    public static Speech Of(GardenBook book) => new(book.Language, book.Clock, book.Units);

    public static Speech Of(Person person, UnitSystem gardenUnits) => new(person.Language, person.Clock, person.Units ?? gardenUnits);

    /// <summary>The text of a key with its places filled.</summary>
    /// <exception cref="KeyNotFoundException">There is no such text: a bug.</exception>
    public string Say(string key, params ReadOnlySpan<(string Name, object Value)> values) => Words.Patterns[key].Fill(values);

    public bool Has(string key) => Words.Patterns.ContainsKey(key);

    /// <summary>The word for a value of a closed list: <c>stage.main-work</c>.</summary>
    public string Word<T>(string family, T value, params ReadOnlySpan<(string Name, object Value)> values)
        where T : struct, Enum => Say($"{family}.{JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString())}", values);

    /// <summary>A text written in English by one of these forms, in this language; null when it follows none of them.</summary>
    public string? Retell(string text, IEnumerable<string> keys) =>
        (from key in keys
         let values = WordList.Of(Language.English).Patterns[key].ValuesOf(text)
         where values is not null
         select Say(key, values)).FirstOrDefault();

    /// <summary>A text of the catalogue of kinds in this language; what the gardener wrote herself stays as it is.</summary>
    public string Catalogue(string text) => Words.Catalogue.GetValueOrDefault(text, text);
}
