using System.Text;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Where in a document in UTF-8 the lines and columns lie that a reader of XML tells. Asked in rising order.</summary>
internal sealed class BytePlaces(ReadOnlyMemory<byte> document)
{
    private int at = document.Span.StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
    private int line = 1;
    private int column = 1;

    /// <summary>Index of the byte; -1 when there is no such place, or it lies before one asked earlier.</summary>
    /// <param name="wantedLine">From 1.</param>
    /// <param name="wantedColumn">From 1, counted in UTF-16.</param>
    public int Of(int wantedLine, int wantedColumn)
    {
        while (line < wantedLine)
        {
            if (!EndLine()) return -1;
        }

        if (line != wantedLine || column > wantedColumn) return -1;
        Advance(wantedColumn - column);
        return column == wantedColumn && at < document.Length ? at : -1;
    }

    /// <summary>A line ends with LF, CR LF or CR, as XML has it.</summary>
    private bool EndLine()
    {
        var rest = document.Span[at..];
        var end = rest.IndexOfAny((byte)'\r', (byte)'\n');
        if (end < 0) return false;
        at += end + (rest[end..].StartsWith("\r\n"u8) ? 2 : 1);
        line++;
        column = 1;
        return true;
    }

    /// <summary>Nearly all is ASCII, where a sign is a byte.</summary>
    private void Advance(int signs)
    {
        while (signs > 0 && at < document.Length)
        {
            var ahead = document.Span.Slice(at, Math.Min(signs, document.Length - at));
            var (bytes, passed) = (ahead.IndexOfAnyExceptInRange((byte)0, (byte)0x7F), 0);
            if (bytes < 0) bytes = ahead.Length;
            if (bytes > 0) passed = bytes;
            else if (Rune.DecodeFromUtf8(document.Span[at..], out var rune, out bytes) == System.Buffers.OperationStatus.Done) passed = rune.Utf16SequenceLength;
            else return;

            at += bytes;
            column += passed;
            signs -= passed;
        }
    }
}
