using System.Globalization;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>Makes the pieces of a column: headings, jobs, lines of lists.</summary>
internal sealed class SheetPieces(SheetType type, double room)
{
    public const double SmallSize = 7.4;
    private const double HeadingSize = 9.2;
    private const double Size = 8.2;
    private const double WhenSize = 7.8;
    private const double TextX = 30;
    private const double BulletX = 8;
    private const int MostLinesTogether = 10;
    private const double TickX = 12;
    private const double TickGap = 9;
    private const double TickRow = 10.5;

    public Piece Heading(string text)
    {
        var (marks, depth) = type.Set(text, 0, 4, room, HeadingSize, bold: true);
        return new([.. marks, new Stroke(0, depth + 5, room, depth + 5, 1)], depth + 7, WithNext: true);
    }

    /// <summary>A box to tick, number and title, when, and what else to know.</summary>
    public Piece Job(SheetJob job)
    {
        List<Mark> marks =
        [
            new Box(1, 1.5, 9, 9, Fill.Paper, Edge: true),
            new Label(26, 1 + Size, job.Number.ToString(CultureInfo.InvariantCulture), Size, Bold: true, Anchor: Anchor.End),
        ];
        var depth = 1.0;
        Add(job.Title, Size, bold: true);
        Add(job.When, WhenSize, bold: false);
        foreach (var detail in job.Details) Add(detail, SmallSize, bold: false);
        marks.Add(new Stroke(0, depth + 1.5, room, depth + 1.5, 0.3));
        return new(marks, depth + 2.5);

        void Add(string text, double size, bool bold)
        {
            var (lines, deep) = type.Set(text, TextX, depth, room - TextX, size, bold);
            marks.AddRange(lines);
            depth += deep;
        }
    }

    public IEnumerable<Piece> List(SheetList list) => (list.Ticks ? Ticks(list.Lines) : list.Lines.SelectMany(Bullet)).Prepend(Heading(list.Heading));

    /// <summary>One piece; or one for each line where it is so long that it could be longer than a page.</summary>
    private IEnumerable<Piece> Bullet(string text)
    {
        var lines = type.Wrap(text, SmallSize, bold: false, room - BulletX);
        IEnumerable<string[]> parts = lines.Count <= MostLinesTogether ? [[.. lines]] : lines.Chunk(1);
        return parts.Select((part, at) => Lines(part, first: at == 0));
    }

    private static Piece Lines(string[] lines, bool first)
    {
        const double Line = SmallSize * SheetType.Leading;
        Mark[] point = first ? [new Label(1, SmallSize, "•", SmallSize)] : [];
        return new([.. point, .. lines.Select((line, at) => new Label(BulletX, SmallSize + at * Line, line, SmallSize))], lines.Length * Line + 0.5);
    }

    /// <summary>Boxes to tick one after another, in rows; a line too long for a row takes several.</summary>
    private IEnumerable<Piece> Ticks(IReadOnlyList<string> lines)
    {
        List<Mark> row = [];
        var (x, depth) = (0.0, TickRow);
        foreach (var line in lines)
        {
            var wide = TickX + type.Width(line, SmallSize, bold: false);
            if (x > 0 && x + wide > room)
            {
                yield return new(row, depth);
                (row, x, depth) = ([], 0, TickRow);
            }

            var (words, deep) = type.Set(line, x + TickX, 0, room - TickX - x, SmallSize);
            row.AddRange(words.Prepend(new Box(x + 1, 0.5, 8, 8, Fill.Paper, Edge: true)));
            depth = Math.Max(depth, deep + 1);
            x += wide + TickGap;
        }

        if (row.Count > 0) yield return new(row, depth);
    }
}
