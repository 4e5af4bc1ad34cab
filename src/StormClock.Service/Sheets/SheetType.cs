using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>How wide a text is in the sheet's own font, points.</summary>
internal delegate double Ruler(string text, double size, bool bold);

/// <summary>Sets words in lines that are no wider than there is room.</summary>
internal sealed class SheetType(Ruler ruler)
{
    /// <summary>From line to line, as a share of the letters' size.</summary>
    public const double Leading = 1.22;

    public double Width(string text, double size, bool bold) => ruler(text, size, bold);

    /// <summary>Lines broken at blanks; a word too long for a line is broken where it must be.</summary>
    public IReadOnlyList<string> Wrap(string text, double size, bool bold, double room)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ').SelectMany(word => Pieces(word, size, bold, room)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && ruler(longer, size, bold) > room)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>A text from a corner downwards, and how deep it is.</summary>
    public (IReadOnlyList<Mark> Marks, double Depth) Set(string text, double x, double y, double room, double size, bool bold = false)
    {
        var lines = Wrap(text, size, bold, room);
        return (
            [.. lines.Select((line, at) => new Label(x, y + size + at * size * Leading, line, size, bold))],
            lines.Count * size * Leading);
    }

    private IEnumerable<string> Pieces(string word, double size, bool bold, double room)
    {
        var rest = word;
        while (rest.Length > 1 && ruler(rest, size, bold) > room)
        {
            var length = rest.Length - 1;
            while (length > 1 && ruler(rest[..length], size, bold) > room) length--;
            if (char.IsHighSurrogate(rest[length - 1]) && length > 1) length--;
            yield return rest[..length];
            rest = rest[length..];
        }

        yield return rest;
    }
}
