namespace StormClock.Service.Books.Csv;

/// <summary>One row of the table as the mapping that the same item would be in the book. An empty cell is a key left out.</summary>
internal static class ItemRow
{
    private static readonly string[] JobParts = ["kind", "minutes", "people"];

    public static YamlMap Of(CsvRow row, IReadOnlyList<string?> columns) =>
        new(row.Line, [.. columns.Zip(row.Cells)
            .Where(pair => pair.First is not null && pair.Second.Trim().Length > 0)
            .DistinctBy(pair => pair.First)
            .Select(pair => new YamlEntry(pair.First!, row.Line, Value(row.Line, pair.First!, pair.Second.Trim())))]);

    private static YamlNode Value(int line, string key, string cell) => key switch
    {
        "endangers" or "spot" => new YamlList(line, [.. Split(cell, ' ').Select(word => Text(line, word))]),
        "jobs" when cell != "none" => new YamlList(line, [.. Split(cell, ' ').Select(job => Job(line, job))]),
        _ => Text(line, cell),
    };

    /// <summary><c>tie</c>, <c>tie:20</c> with its minutes, or <c>move:30:2</c> with the people it takes too.</summary>
    private static YamlMap Job(int line, string job)
    {
        var parts = job.Split(':', JobParts.Length);
        return new(line, [.. JobParts.Zip(parts).Select(pair => new YamlEntry(pair.First, line, Text(line, pair.Second)))]);
    }

    private static string[] Split(string cell, char by) => cell.Split(by, StringSplitOptions.RemoveEmptyEntries);

    private static YamlText Text(int line, string value) => new(line, value, Quoted: true);
}
