using StormClock.Core.Garden;
using YamlDotNet.Serialization;

namespace StormClock.Service.Wording;

/// <summary>
/// Everything that people read in one language, by key: <c>Wording/en.yaml</c>, <c>Wording/es.yaml</c>. Part of the program; a
/// text that is missing or broken there is a bug, found by the tests.
/// </summary>
public sealed class WordList
{
    private static readonly Dictionary<Language, WordList> All = Enum.GetValues<Language>().ToDictionary(language => language, language => new WordList(language));

    private WordList(Language language)
    {
        Tag = LanguageTags.Of(language);
        Texts = Read($"{Tag}.yaml");
        Patterns = Texts.ToDictionary(pair => pair.Key, pair => Pattern.Parse(pair.Value));
        Catalogue = language == Language.English ? new Dictionary<string, string>() : Read($"catalogue-{Tag}.yaml");
    }

    /// <summary>The language as BCP 47 names it.</summary>
    public string Tag { get; }

    /// <summary>As they are written.</summary>
    public IReadOnlyDictionary<string, string> Texts { get; }

    public IReadOnlyDictionary<string, Pattern> Patterns { get; }

    /// <summary>Texts of the catalogue of kinds, by their English wording.</summary>
    public IReadOnlyDictionary<string, string> Catalogue { get; }

    public static WordList Of(Language language) => All[language];

    private static Dictionary<string, string> Read(string name)
    {
        using var text = new StreamReader(typeof(WordList).Assembly.GetManifestResourceStream(name)!);
        return new DeserializerBuilder().WithDuplicateKeyChecking().Build().Deserialize<Dictionary<string, string>>(text);
    }
}
