using System.Text;

namespace StormClock.Service.Books.Csv;

/// <param name="Line">1-based line it begins in; a cell in quotes may run over several.</param>
internal sealed record CsvRow(int Line, IReadOnlyList<string> Cells)
{
    /// <summary>Spreadsheets leave rows of empty cells behind where something was deleted.</summary>
    public bool IsBlank => Cells.All(string.IsNullOrWhiteSpace);
}

/// <summary>Comma-separated text by RFC 4180: cells in quotes may hold commas, quotes (doubled) and line ends.</summary>
internal sealed class CsvText
{
    private readonly string text;
    private readonly char separator;
    private readonly FaultList faults;
    private int at;
    private int line = 1;

    private CsvText(string text, char separator, FaultList faults)
    {
        this.text = text;
        this.separator = separator;
        this.faults = faults;
    }

    /// <summary>All rows but blank ones. Reading stops at the first cell that cannot be told from the next, with a fault.</summary>
    public static IReadOnlyList<CsvRow> Rows(string text, char separator, FaultList faults) => new CsvText(text, separator, faults).Rows();

    /// <summary>A cell as it is written, in quotes only where it must be.</summary>
    public static string Cell(string value) =>
        value.AsSpan().IndexOfAny(",;\"\r\n") >= 0 || value != value.Trim() ? $"\"{value.Replace("\"", "\"\"")}\"" : value;

    private List<CsvRow> Rows()
    {
        var rows = new List<CsvRow>();
        while (at < text.Length)
        {
            if (Row() is not { } row) break;
            if (!row.IsBlank) rows.Add(row);
        }

        return rows;
    }

    private CsvRow? Row()
    {
        var first = line;
        var cells = new List<string>();
        while (true)
        {
            var cell = at < text.Length && text[at] == '"' ? Quoted() : Plain();
            if (cell is null) return null;

            cells.Add(cell);
            if (at < text.Length && text[at] == separator) at++;
            else break;
        }

        TakeLineEnd();
        return new CsvRow(first, cells);
    }

    private string? Plain()
    {
        var start = at;
        while (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n' or '"')) at++;
        if (at == text.Length || text[at] != '"') return text[start..at];

        faults.Add(line, "a quotation mark stands inside a cell; put the whole cell in quotes and write the mark twice");
        return null;
    }

    private string? Quoted()
    {
        var first = line;
        var cell = new StringBuilder();
        for (at++; at < text.Length; at++)
        {
            if (text[at] == '\n') line++;
            if (text[at] != '"') cell.Append(text[at]);
            else if (at + 1 < text.Length && text[at + 1] == '"') cell.Append(text[at++]);
            else return Closed() ? cell.ToString() : null;
        }

        faults.Add(first, "a cell in quotes that begins here is never closed; add the closing quotation mark");
        return null;
    }

    /// <summary>Behind the closing mark comes the next cell, the next row or the end.</summary>
    private bool Closed()
    {
        at++;
        if (at == text.Length || text[at] == separator || text[at] is '\r' or '\n') return true;

        faults.Add(line, "something stands behind the closing quotation mark of a cell; write a mark inside a cell twice");
        return false;
    }

    private void TakeLineEnd()
    {
        if (at < text.Length && text[at] == '\r') at++;
        if (at < text.Length && text[at] == '\n') at++;
        line++;
    }
}
