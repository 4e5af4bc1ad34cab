namespace StormClock.Service.Books;

/// <summary>A stretch of a text, in characters from its beginning (a byte order mark not counted).</summary>
/// <param name="End">Behind the last character.</param>
internal readonly record struct YamlSpan(int Start, int End);

/// <summary>A piece of a YAML text with the 1-based line it begins at.</summary>
internal abstract record YamlNode(int Line)
{
    /// <summary>Where it stands, without blanks, remarks or empty lines behind it; nothing for what comes from a table.</summary>
    public YamlSpan Span { get; init; }
}

/// <summary>Stands for something that was refused, with the reason told already.</summary>
internal sealed record YamlHole(int Line) : YamlNode(Line);

/// <param name="Quoted">Written in quotes or as a block.</param>
internal sealed record YamlText(int Line, string Value, bool Quoted) : YamlNode(Line)
{
    /// <summary>Nothing but blanks written after the key, or YAML's own words for nothing.</summary>
    public bool IsNothing => Value.Trim().Length == 0 || (!Quoted && Value is "~" or "null");
}

internal sealed record YamlList(int Line, IReadOnlyList<YamlNode> Entries) : YamlNode(Line)
{
    /// <summary>Written in brackets.</summary>
    public bool Flow { get; init; }
}

internal sealed record YamlMap(int Line, IReadOnlyList<YamlEntry> Entries) : YamlNode(Line)
{
    /// <summary>Written in braces.</summary>
    public bool Flow { get; init; }
}

internal sealed record YamlEntry(string Key, int Line, YamlNode Value)
{
    public YamlSpan KeySpan { get; init; }
}
