using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Keeper;

/// <summary>How a page says what stands in the fields of a person.</summary>
internal static class PersonWords
{
    /// <summary>What may be chosen, each with its words; null for a field that is written freely.</summary>
    public static IEnumerable<(string Token, string Words)>? Choices(string key, Speech speech) => key switch
    {
        "role" => Tokens.Roles.Select(pair => (pair.Key, speech.Word("role", pair.Value))),
        "ladder" => Tokens.Ladders.Select(pair => (pair.Key, speech.Word("ladder", pair.Value))),
        "language" => Tokens.Languages.Select(pair => (pair.Key, speech.Word("language", pair.Value))),
        "clock" => Tokens.Clocks.Select(pair => (pair.Key, speech.Say(pair.Value == ClockForm.Hours24 ? "people.clock.24" : "people.clock.12"))),
        "units" => Tokens.Units.Select(pair => (pair.Key, speech.Word("units", pair.Value))),
        _ => null,
    };

    /// <summary>Where what the book says now is not what was typed.</summary>
    public static IEnumerable<(string Label, string Now, string Yours)> Differences(IReadOnlyDictionary<string, string> now, IReadOnlyDictionary<string, string> typed, Speech speech) =>
        PersonForm.Fields.Append("hours")
            .Select(key => (Label: speech.Say($"field.{key}"), Now: Shown(key, now, speech), Yours: Shown(key, typed, speech)))
            .Where(field => field.Now != field.Yours);

    private static string Shown(string key, IReadOnlyDictionary<string, string> fields, Speech speech)
    {
        var text = key == "hours" ? Hours(fields, speech) : fields.GetValueOrDefault(key, "").Trim();
        return text.Length == 0 ? speech.Say("walk.nothing") : Choices(key, speech)?.FirstOrDefault(choice => choice.Token == text).Words ?? text;
    }

    private static string Hours(IReadOnlyDictionary<string, string> fields, Speech speech) => string.Join("; ", PersonForm.Rows(fields).Select(row =>
    {
        string Of(string part) => fields.GetValueOrDefault($"hours.{row}.{part}", "");
        var days = Tokens.Weekdays.Where(day => Of(day.Key).Length > 0).Select(day => speech.Word("day-short", day.Value));
        return string.Join(' ', days.Append(Of("date")).Append($"{Of("from")}–{Of("to")}").Where(part => part.Length > 0));
    }));
}
