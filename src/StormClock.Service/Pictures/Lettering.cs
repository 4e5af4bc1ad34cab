namespace StormClock.Service.Pictures;

/// <summary>Text whose font is not known beforehand: the reader's own sans-serif.</summary>
internal static class Lettering
{
    /// <summary>Ems a letter takes in the wider of the usual sans-serif fonts; wide scripts take a whole one.</summary>
    private const double EmsPerLetter = 0.6;

    private const char FirstWide = '\u2E80';

    public static double Width(string text, double size) => text.Sum(letter => letter >= FirstWide ? size : size * EmsPerLetter);

    /// <summary>The text, cut with an ellipsis where it is wider than there is room.</summary>
    public static string Cut(string text, double size, double room)
    {
        if (Width(text, size) <= room) return text;
        var length = text.Length;
        while (length > 0 && Width(text[..length] + "…", size) > room) length--;
        return length == 0 ? "" : text[..length].TrimEnd() + "…";
    }

    /// <summary>The text in lines of at most so many; the last is cut where the rest does not fit.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, double room, int most)
    {
        var lines = new List<string>();
        var rest = text;
        while (rest.Length > 0 && lines.Count < most)
        {
            var end = lines.Count == most - 1 ? rest.Length : LineEnd(rest, size, room);
            lines.Add(Cut(rest[..end].TrimEnd(), size, room));
            rest = rest[end..].TrimStart();
        }

        return lines;
    }

    /// <summary>Where the first line of a text ends: at the last blank that fits, else the whole first word.</summary>
    private static int LineEnd(string text, double size, double room)
    {
        if (Width(text, size) <= room) return text.Length;
        var end = text.IndexOf(' ', StringComparison.Ordinal);
        if (end < 0) return text.Length;
        for (var next = end; next >= 0 && Width(text[..next], size) <= room; next = text.IndexOf(' ', next + 1)) end = next;
        return end;
    }
}
