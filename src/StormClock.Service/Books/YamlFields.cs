using System.Text.RegularExpressions;

namespace StormClock.Service.Books;

/// <summary>A text with the line it stands in.</summary>
internal readonly record struct Placed(string Text, int Line);

/// <summary>
/// Reads one mapping key by key. Whatever is wrong goes to the list of faults and a stand-in comes back, so that the
/// rest is read too; the stand-ins are never used, because a file with a fault is refused whole.
/// </summary>
internal sealed partial class YamlFields
{
    private const int LongestText = 400;

    /// <summary>Far above any garden; keeps a runaway file from costing minutes.</summary>
    private const int LongestList = 2000;

    private const int LongestShown = 40;

    private static readonly string[] NamingKeys = ["id", "kind", "name", "material"];

    private readonly YamlMap map;
    private readonly FaultList faults;
    private readonly HashSet<string> misspelt = [];

    /// <param name="noun">What the mapping describes, e.g. <c>item</c>; its id is added to messages.</param>
    /// <param name="known">Every key that may stand here; null when the keys are names of the book's own.</param>
    public YamlFields(YamlMap map, string noun, IReadOnlyCollection<string>? known, FaultList faults)
    {
        this.map = map;
        this.faults = faults;
        Subject = Describe(noun);
        if (known is null) return;

        foreach (var entry in map.Entries.Where(entry => !known.Contains(entry.Key))) Unknown(entry, known);
    }

    /// <summary>What messages call this mapping, e.g. <c>item 'fig-pots'</c>.</summary>
    public string Subject { get; }

    public int Line => map.Line;

    /// <summary>Where it begins, as messages name it.</summary>
    public string Place => faults.Place(map.Line);

    public IEnumerable<string> Keys => map.Entries.Select(entry => entry.Key);

    public bool Has(string key) => Entry(key) is not null;

    /// <summary>The line of a key, or of the mapping when the key is absent.</summary>
    public int LineOf(string key) => Entry(key)?.Line ?? map.Line;

    public void Fault(string key, string reason) => FaultAt(LineOf(key), key, reason);

    public void FaultAt(int line, string key, string reason) => faults.Add(line, $"'{key}' of {Subject} {reason}");

    /// <summary>A fault in whole words of its own.</summary>
    public void Tell(int line, string reason) => faults.Add(line, reason);

    /// <summary>The text of a key as it stands there; null when it is absent or no text. Nothing is judged.</summary>
    public string? Peek(string key) => (Entry(key)?.Value as YamlText)?.Value.Trim();

    /// <summary>The node of a required key; null, with a fault, when it is absent or empty.</summary>
    public YamlNode? Required(string key, string example)
    {
        if (Entry(key) is not { } entry)
        {
            if (!misspelt.Contains(key)) faults.Add(map.Line, $"{Subject} has no '{key}'; add {key}: {example}");
            return null;
        }

        return Filled(entry, example);
    }

    public YamlNode? Optional(string key, string example) => Entry(key) is { } entry ? Filled(entry, example) : null;

    public string Text(string key, string example) => Required(key, example) is { } node ? OneLine(key, node, example) : "";

    public string? OptionalText(string key, string example) => Optional(key, example) is { } node ? OneLine(key, node, example) : null;

    /// <summary>Lower-case letters, digits and hyphens.</summary>
    public string Id(string key, string example)
    {
        var text = Text(key, example);
        if (text.Length > 0 && !IsId(text)) Fault(key, $"must be made of lower-case letters, digits and hyphens, not '{Shown(text)}'; write e.g. {key}: {example}");
        return text;
    }

    public static bool IsId(string text) => text.Length <= 60 && IdShape().IsMatch(text);

    public bool Flag(string key, bool otherwise)
    {
        if (OptionalText(key, "true") is not { } text) return otherwise;
        if (text is "true" or "false") return text == "true";

        Fault(key, $"must be true or false, not '{Shown(text)}'");
        return otherwise;
    }

    /// <summary>A mapping under a key; null when absent.</summary>
    public YamlFields? Map(string key, string noun, IReadOnlyCollection<string> known, string example) =>
        Optional(key, example) is { } node ? AsMap(key, node, noun, known, example) : null;

    /// <summary>A mapping whose keys are names of the book's own, such as other sites; null when absent.</summary>
    public YamlFields? OpenMap(string key, string noun, string example) =>
        Optional(key, example) is { } node ? AsMap(key, node, noun, null, example) : null;

    public YamlFields? RequiredMap(string key, string noun, IReadOnlyCollection<string> known, string example) =>
        Required(key, example) is { } node ? AsMap(key, node, noun, known, example) : null;

    /// <summary>A list of mappings under a key; empty when absent.</summary>
    public IReadOnlyList<YamlFields> Maps(string key, string noun, IReadOnlyCollection<string> known, string example, bool required = false)
    {
        if ((required ? Required(key, example) : Optional(key, example)) is not { } node) return [];
        if (node is YamlHole) return [];
        if (node is YamlList list)
        {
            if (list.Entries.Count > LongestList) Fault(key, $"has {list.Entries.Count} entries, more than {LongestList}; split it");
            return [.. list.Entries.Take(LongestList).Select(entry => AsMap(key, entry, noun, known, example)).OfType<YamlFields>()];
        }

        Fault(key, $"must be a list, each entry beginning with '- '; write e.g. {example}");
        return [];
    }

    /// <summary>A list of words, or one word; empty when absent.</summary>
    public IReadOnlyList<Placed> Words(string key, string example)
    {
        if (Optional(key, example) is not { } node) return [];

        var words = new List<Placed>();
        foreach (var entry in node is YamlList list ? list.Entries : [node])
        {
            if (entry is YamlHole) continue;
            if (entry is YamlText { IsNothing: false }) words.Add(new Placed(OneLine(key, entry, example), entry.Line));
            else faults.Add(entry.Line, $"'{key}' of {Subject} must be a list of words; write e.g. {key}: {example}");
        }

        return words;
    }

    /// <summary>A list of so many words; null when it is absent, or wrong and told.</summary>
    /// <param name="what">As messages name it: <c>two numbers in metres</c>.</param>
    public IReadOnlyList<Placed>? Row(string key, int count, string what, string example)
    {
        if (Optional(key, example) is not { } node || node is YamlHole) return null;
        if (node is YamlList list && list.Entries.Count == count && list.Entries.All(entry => entry is YamlText { IsNothing: false })) return Words(key, example);

        Fault(key, $"must be {what}; write e.g. {key}: {example}");
        return null;
    }

    internal static string Shown(string text) => text.Length <= LongestShown ? text : text[..LongestShown] + "…";

    private string Describe(string noun) =>
        NamingKeys.Select(key => Entry(key)?.Value).OfType<YamlText>().FirstOrDefault() is { Value: not "" } name
            ? $"{noun} '{Shown(name.Value)}'"
            : noun;

    private YamlEntry? Entry(string key) => map.Entries.FirstOrDefault(entry => entry.Key == key);

    private void Unknown(YamlEntry entry, IReadOnlyCollection<string> known)
    {
        faults.Add(entry.Line, $"unknown key '{Shown(entry.Key)}' in {Subject}; {Nearest.Hint(entry.Key, known)}");
        if (Nearest.To(entry.Key, known) is { } meant) misspelt.Add(meant);
    }

    private YamlNode? Filled(YamlEntry entry, string example)
    {
        if (entry.Value is YamlHole) return null;
        if (entry.Value is not YamlText { IsNothing: true }) return entry.Value;

        faults.Add(entry.Line, $"'{entry.Key}' of {Subject} has no value; write e.g. {entry.Key}: {example}, or take the key out");
        return null;
    }

    private string OneLine(string key, YamlNode node, string example)
    {
        if (node is YamlHole) return "";
        if (node is not YamlText text)
            faults.Add(node.Line, $"'{key}' of {Subject} must be a single value; write e.g. {key}: {example}");
        else if (text.Value.Any(char.IsControl))
            faults.Add(node.Line, $"'{key}' of {Subject} must be one line of plain text");
        else if (text.Value.Length > LongestText)
            faults.Add(node.Line, $"'{key}' of {Subject} is longer than {LongestText} characters; shorten it");
        else
            return text.Value.Trim();

        return "";
    }

    private YamlFields? AsMap(string key, YamlNode node, string noun, IReadOnlyCollection<string>? known, string example)
    {
        if (node is YamlHole) return null;
        if (node is YamlMap inner) return new YamlFields(inner, noun, known, faults);

        faults.Add(node.Line, $"'{key}' of {Subject} must hold keys with values; write e.g. {example}");
        return null;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex IdShape();
}
