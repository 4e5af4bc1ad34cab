using StormClock.Core.Garden;

namespace StormClock.Service.Wording;

/// <summary>The languages by the tags of BCP 47, as books, browsers and files name them.</summary>
public static class LanguageTags
{
    public static IReadOnlyDictionary<string, Language> All { get; } = new Dictionary<string, Language> { ["en"] = Language.English, ["es"] = Language.Spanish };

    public static string Of(Language language) => All.First(pair => pair.Value == language).Key;
}
