using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// What spoke, in the reader's language. The records of Core name themselves in the English of the log
/// (<c>NINETY advisory 1</c>), and their names are stored; so they are known again by the forms of those names. Official names of alerts are told with
/// the original, because that is what the radio says. Any other name is somebody's own and stays.
/// </summary>
internal static class SourceWords
{
    /// <summary>The more particular before the more general.</summary>
    private static readonly string[] Forms =
    [
        "source.public-advisory", "source.probabilities", "source.advisory", "source.point", "source.observation", "source.wind-note",
        "source.rain-note", "source.water-note", "source.leave-by-note", "source.all-clear-note", "source.official-order",
    ];

    public static string Of(string name, Speech speech)
    {
        if (name.Length == 0) return speech.Say("source.newest");
        if (speech.Language == Language.English) return name;
        if (WordList.Of(Language.English).Patterns["source.cancel"].ValuesOf(name) is [var ended]) return speech.Say("source.cancel", ("name", Event($"{ended.Value}", speech)));

        return speech.Retell(name, Forms) ?? Event(name, speech);
    }

    private static string Event(string name, Speech speech) =>
        speech.Catalogue(name) is var told && told != name ? speech.Say("source.event", ("name", told), ("original", name)) : name;
}
