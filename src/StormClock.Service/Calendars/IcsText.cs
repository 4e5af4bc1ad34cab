using System.Text;

namespace StormClock.Service.Calendars;

/// <summary>Lines of a calendar file by the rules of RFC 5545, 3.1 and 3.3.</summary>
internal sealed class IcsText
{
    /// <summary>Octets of a line without its end.</summary>
    private const int LongestLine = 75;

    private readonly StringBuilder text = new();

    /// <summary>A property whose value needs no escaping.</summary>
    public void Line(string name, string value) => Fold($"{name}:{value}");

    /// <summary>A property of free text.</summary>
    public void Text(string name, string value) => Line(name, Escape(value));

    /// <summary>An instant in UTC, so that no time zone need be described; the part of a second is dropped.</summary>
    public void Time(string name, Instant at) => Line(name, $"{at:uuuuMMdd'T'HHmmss'Z'}");

    public override string ToString() => text.ToString();

    /// <summary>Line ends of any kind become the escaped one.</summary>
    private static string Escape(string value) => value
        .Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace(";", "\\;", StringComparison.Ordinal)
        .Replace(",", "\\,", StringComparison.Ordinal)
        .ReplaceLineEndings("\\n");

    /// <summary>Never within a character: a reader that unfolds text instead of bytes would spoil it.</summary>
    private void Fold(string line)
    {
        var length = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (length + rune.Utf8SequenceLength > LongestLine)
            {
                text.Append("\r\n ");
                length = 1;
            }

            text.Append(rune.ToString());
            length += rune.Utf8SequenceLength;
        }

        text.Append("\r\n");
    }
}
