using System.Text;

namespace StormClock.Service.Books.Edits;

/// <summary>Changes to be made in a text, each between two places of it; everything else stays as it is, to the character.</summary>
/// <param name="text">Without a byte order mark.</param>
internal sealed class TextEdits(string text)
{
    private readonly List<Change> changes = [];

    private sealed record Change(int Start, int End, string Put);

    /// <summary>What ends a line in this text.</summary>
    public string Newline { get; } = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    public bool Any => changes.Count > 0;

    /// <summary>Something is taken away that may be, or may hold, a remark.</summary>
    public bool TakesRemarks => changes.Exists(change => text.AsSpan(change.Start, change.End - change.Start).Contains('#'));

    public void Replace(int start, int end, string put) => changes.Add(new(start, end, put));

    /// <summary>Whole lines of their own below the line in which something ends.</summary>
    /// <param name="lines">Without the end of the last line.</param>
    public void AddBelow(int end, string lines)
    {
        var next = NextLine(end);
        Replace(next, next, EndsOpen(next) ? Newline + lines : lines + Newline);
    }

    /// <summary>Takes away the lines from the one in which something begins to the one in which it ends.</summary>
    public void RemoveLines(int start, int end)
    {
        var (first, next) = (LineStart(start), NextLine(end));
        Replace(first > 0 && EndsOpen(next) ? EndOfLineBefore(first) : first, next, "");
    }

    public int LineStart(int place) => place == 0 ? 0 : text.LastIndexOf('\n', place - 1) + 1;

    /// <summary>What stands before a place in its line.</summary>
    public ReadOnlySpan<char> Before(int place) => text.AsSpan(LineStart(place)..place);

    /// <summary>The line above is empty.</summary>
    public bool HasGapAbove(int place) => LineStart(place) is > 0 and var start && Before(start - 1).IsWhiteSpace();

    /// <summary>The place behind the colon that follows a key; null where the key is written in another way.</summary>
    public int? BehindColon(int keyEnd)
    {
        var at = keyEnd;
        while (at < text.Length && text[at] == ' ') at++;
        return at < text.Length && text[at] == ':' ? at + 1 : null;
    }

    /// <returns>The new text; null where two changes want the same characters.</returns>
    public string? Made()
    {
        var made = new StringBuilder(text.Length);
        var done = 0;
        foreach (var change in changes.OrderBy(change => change.Start).ThenBy(change => change.End))
        {
            // Lines taken away one after the other may share the line end between them.
            var start = change.Put.Length == 0 ? Math.Max(change.Start, done) : change.Start;
            if (start < done) return null;

            made.Append(text.AsSpan(done..start)).Append(change.Put);
            done = Math.Max(done, change.End);
        }

        return made.Append(text.AsSpan(done)).ToString();
    }

    private int NextLine(int place) => text.IndexOf('\n', place) is >= 0 and var end ? end + 1 : text.Length;

    /// <summary>The text ends there, and its last line has no end.</summary>
    private bool EndsOpen(int next) => next == text.Length && !text.EndsWith('\n');

    private int EndOfLineBefore(int lineStart) => lineStart > 1 && text[lineStart - 2] == '\r' ? lineStart - 2 : lineStart - 1;
}
