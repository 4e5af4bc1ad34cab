namespace StormClock.Service.Books;

/// <summary>A piece of a YAML text with the 1-based line it begins at.</summary>
internal abstract record YamlNode(int Line);

/// <summary>Stands for something that was refused, with the reason told already.</summary>
internal sealed record YamlHole(int Line) : YamlNode(Line);

/// <param name="Quoted">Written in quotes or as a block.</param>
internal sealed record YamlText(int Line, string Value, bool Quoted) : YamlNode(Line)
{
    /// <summary>Nothing but blanks written after the key, or YAML's own words for nothing.</summary>
    public bool IsNothing => Value.Trim().Length == 0 || (!Quoted && Value is "~" or "null");
}

internal sealed record YamlList(int Line, IReadOnlyList<YamlNode> Entries) : YamlNode(Line);

internal sealed record YamlMap(int Line, IReadOnlyList<YamlEntry> Entries) : YamlNode(Line);

internal sealed record YamlEntry(string Key, int Line, YamlNode Value);
