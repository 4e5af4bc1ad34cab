namespace StormClock.Service.Books.Csv;

/// <summary>Reads the table of items: a header of the book's own keys, then one row an item, in any order of columns.</summary>
internal static class ItemTable
{
    private static readonly string[] Needed = ["id", "kind", "area", "count"];

    /// <summary>A table of two thousand items stays far below.</summary>
    private const int MostCharacters = 1_000_000;

    private const int MostRows = 2000;

    /// <returns>Each row as the mapping that the same item would be in the book; empty, with the reason in <paramref name="faults"/>, for what is no such table.</returns>
    public static IReadOnlyList<YamlMap> Read(string text, FaultList faults)
    {
        text = text.TrimStart('\uFEFF');
        if (!IsTable(text, faults)) return [];

        var rows = CsvText.Rows(text, Separator(text), faults);
        if (rows.Count == 0 || Columns(rows[0], faults) is not { } columns) return [];
        if (rows.Count - 1 > MostRows) faults.Add(rows[MostRows + 1].Line, $"the table has {rows.Count - 1} rows, more than {MostRows}; split it into several gardens");
        return [.. rows.Skip(1).Take(MostRows).Where(row => HasAllCells(row, columns, faults)).Select(row => ItemRow.Of(row, columns))];
    }

    private static bool IsTable(string text, FaultList faults)
    {
        if (string.IsNullOrWhiteSpace(text)) faults.Add(1, "the file is empty; the first line must name the columns, e.g. id,name,kind,area,count");
        else if (text.Length > MostCharacters) faults.Add(1, $"the file has {text.Length} characters, more than {MostCharacters}; split it into several gardens");
        else if (YamlGate.FirstControl(text) is var odd and >= 0) faults.Add(YamlGate.LineAt(text, odd), "this is a spreadsheet's own file or holds control characters; save it as CSV in UTF-8");
        else return true;

        return false;
    }

    /// <summary>Where a comma parts decimals, spreadsheets part cells by semicolons; the header shows it.</summary>
    private static char Separator(string text)
    {
        var header = text.TrimStart().AsSpan();
        var end = header.IndexOfAny('\r', '\n');
        if (end >= 0) header = header[..end];
        return header.Contains(';') && !header.Contains(',') ? ';' : ',';
    }

    /// <summary>The key of each column; null where the column is not known, which is told. Null when the table lacks a column that no item can do without.</summary>
    private static List<string?>? Columns(CsvRow header, FaultList faults)
    {
        var columns = new List<string?>();
        foreach (var name in header.Cells.Select(cell => cell.Trim()))
        {
            var known = GardenKeys.Item.Contains(name);
            if (!known) faults.Add(header.Line, $"unknown column '{YamlFields.Shown(name)}'; {Nearest.Hint(name, GardenKeys.Item)}");
            else if (columns.Contains(name)) faults.Add(header.Line, $"the column '{name}' is there twice; keep one");
            columns.Add(known ? name : null);
        }

        var lacking = Needed.Except(columns).ToList();
        if (lacking.Count == 0) return columns;

        faults.Add(header.Line, $"the table has no column {string.Join(", ", lacking.Select(key => $"'{key}'"))}; the first line must name the columns, e.g. id,name,kind,area,count");
        return null;
    }

    private static bool HasAllCells(CsvRow row, List<string?> columns, FaultList faults)
    {
        if (row.Cells.Count == columns.Count) return true;

        var hint = row.Cells.Count > columns.Count ? "put cells that hold a comma or semicolon in quotes, and write decimals with a point" : "write empty cells too";
        faults.Add(row.Line, $"this row has {row.Cells.Count} cells, but the header has {columns.Count}; {hint}");
        return false;
    }
}
