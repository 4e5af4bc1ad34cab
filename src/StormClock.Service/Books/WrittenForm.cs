namespace StormClock.Service.Books;

/// <summary>Puts what a book writes into lines.</summary>
internal static class WrittenForm
{
    private const int Step = 2;

    /// <summary>A mapping as it stands from <paramref name="column"/> on; its first line is not indented, the last not ended.</summary>
    /// <param name="newline">What ends a line in the file.</param>
    public static string Entry(WrittenMap map, int column, string newline) => map.Flow
        ? $"{{{string.Join(", ", map.Fields.Select(field => $"{field.Key}: {OneLine(field.Value)}"))}}}"
        : string.Join(newline + Blanks(column), map.Fields.Select(field => Field(field, column, newline)));

    /// <summary>A key and its value, the key standing in <paramref name="column"/>.</summary>
    public static string Field(WrittenField field, int column, string newline) => $"{field.Key}:{Behind(field.Value, column, newline)}";

    /// <summary>What follows the colon of a key: a blank and the value, or the lines of a list.</summary>
    public static string Behind(Written value, int column, string newline) => value is WrittenList { Entries.Count: > 0 } list
        ? string.Concat(list.Entries.Select(entry => newline + Blanks(column + Step) + Dashed(entry, column + Step, newline)))
        : $" {OneLine(value)}";

    /// <summary>An entry of a list, the dash standing in <paramref name="column"/>.</summary>
    public static string Dashed(WrittenMap entry, int column, string newline) => $"- {Entry(entry, column + Step, newline)}";

    /// <summary>A value as it stands behind its key on one line.</summary>
    public static string OneLine(Written value) => value switch
    {
        WrittenText text => text.Text,
        WrittenMap map => Entry(map with { Flow = true }, 0, "\n"),
        WrittenList list => $"[{string.Join(", ", list.Entries.Select(OneLine))}]",
        _ => throw new ArgumentOutOfRangeException(nameof(value)),
    };

    /// <summary>The same words would be written; null is what is not written.</summary>
    public static bool Same(Written? one, Written? other) =>
        one is null || other is null ? one is null && other is null : Behind(one, 0, "\n") == Behind(other, 0, "\n");

    private static string Blanks(int count) => new(' ', count);
}
