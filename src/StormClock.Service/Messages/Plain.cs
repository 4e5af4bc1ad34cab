using System.Globalization;
using System.Text;

namespace StormClock.Service.Messages;

/// <summary>Makes what people typed fit for one line of a message.</summary>
public static class Plain
{
    /// <summary>A blank at which no line is broken, within times and amounts; plain text has ordinary ones instead.</summary>
    public const char Unbroken = '\u00A0';

    /// <summary>
    /// One line: white space and control characters become single blanks, characters that turn the direction of writing
    /// are dropped. Otherwise a name could forge a line or a header, or hide what a link says.
    /// </summary>
    public static string Line(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (TurnsDirection(rune)) continue;
            if (!IsBlank(rune)) line.Append(rune.ToString());
            else if (line.Length > 0 && line[^1] != ' ') line.Append(' ');
        }

        return line.ToString().TrimEnd();
    }

    /// <summary>The same, cut to a length; for what another machine said.</summary>
    public static string Cut(string text, int longest)
    {
        var line = Line(text);
        return line.Length <= longest ? line : string.Concat(line.AsSpan(0, longest), "…");
    }

    private static bool IsBlank(Rune rune) =>
        Rune.IsWhiteSpace(rune)
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private static bool TurnsDirection(Rune rune) => rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F;
}
