using System.Globalization;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>Lays a sheet's content out on pages: points, from the upper left corner. Values only; nothing is drawn here.</summary>
internal sealed class SheetLayout
{
    private const double Margin = 32;
    private const double FootDepth = 22;
    private const double TitleSize = 15;
    private const double HeadingSize = 10;
    private const double TextSize = 8.2;
    private const double SmallSize = 7.4;
    private const double PictureScale = 0.72;
    private const double NotesDepth = 54;
    private const int TickColumns = 3;

    private readonly SheetContent content;
    private readonly SheetType type;
    private readonly double width;
    private readonly double height;
    private readonly List<Piece> pieces = [];

    private SheetLayout(SheetContent content, Ruler ruler)
    {
        (this.content, type) = (content, new(ruler));
        (width, height) = content.Letter ? (612, 792) : (595, 842);
    }

    private double Room => width - 2 * Margin;

    /// <returns>A drawing a page.</returns>
    public static IReadOnlyList<Drawing> Pages(SheetContent content, Ruler ruler) => new SheetLayout(content, ruler).Pages();

    private IReadOnlyList<Drawing> Pages()
    {
        Head();
        if (content.Picture is { } picture) Picture(picture.ForSheet(Room / PictureScale));
        var row = new SheetJobRow(type, Room);
        foreach (var place in content.Places)
        {
            Heading(place.Name);
            foreach (var job in place.Jobs) pieces.Add(row.Of(job));
        }

        foreach (var list in content.Lists) List(list);
        Notes();
        var pages = SheetFlow.Pages(pieces, Margin, height - Margin - FootDepth);
        return [.. pages.Select((page, at) => new Drawing(width, height, [.. page.SelectMany(Placed), .. Foot(at + 1, pages.Count)]))];
    }

    private static IEnumerable<Mark> Placed((double Top, Piece Piece) placed) =>
        placed.Piece.Marks.Select(mark => SheetFlow.Moved(mark, Margin, placed.Top));

    private void Head()
    {
        Text(content.Title, TitleSize, bold: true);
        foreach (var line in content.Lead) Text(line, HeadingSize, bold: true);
        if (content.Stops.Count > 0) Heading("Stop times");
        foreach (var line in content.Stops) Text(line, TextSize + 0.8, bold: true);
        Gap(3);
        foreach (var line in content.Why) Text(line, TextSize);
    }

    private void Picture(Drawing picture) =>
        pieces.Add(new([.. picture.Marks.Select(mark => SheetFlow.Moved(mark, 0, 4, PictureScale))], picture.Height * PictureScale + 4));

    private void List(SheetList list)
    {
        Heading(list.Heading);
        if (list.Ticks) Ticks(list.Lines);
        else foreach (var line in list.Lines) Bullet(line);
    }

    private void Bullet(string line)
    {
        var (marks, depth) = type.Set(line, 9, 0, Room - 9, SmallSize);
        pieces.Add(new([new Label(1, SmallSize, "•", SmallSize), .. marks], depth + 1));
    }

    /// <summary>Rows of boxes to tick, side by side.</summary>
    private void Ticks(IReadOnlyList<string> lines)
    {
        var breadth = Room / TickColumns;
        foreach (var row in lines.Chunk(TickColumns))
        {
            var cells = row.Select((line, at) => (X: at * breadth, Set: type.Set(line, at * breadth + 13, 0, breadth - 17, SmallSize))).ToList();
            pieces.Add(new([.. cells.SelectMany(cell => cell.Set.Marks.Prepend(new Box(cell.X + 1, 0.5, 8, 8, Fill.Paper, Edge: true)))], Math.Max(10.5, cells.Max(cell => cell.Set.Depth) + 1.5)));
        }
    }

    private void Notes()
    {
        Heading("Notes");
        var lines = Enumerable.Range(1, (int)(NotesDepth / 18)).Select(at => new Stroke(0, at * 18, Room, at * 18, 0.4));
        pieces.Add(new([.. lines], NotesDepth));
    }

    private void Heading(string text)
    {
        var (marks, depth) = type.Set(text, 0, 5, Room, HeadingSize, bold: true);
        pieces.Add(new([.. marks, new Stroke(0, depth + 5, Room, depth + 5, 1)], depth + 8, WithNext: true));
    }

    private void Text(string text, double size, bool bold = false)
    {
        var (marks, depth) = type.Set(text, 0, 0, Room, size, bold);
        pieces.Add(new(marks, depth + 1.5));
    }

    private void Gap(double depth) => pieces.Add(new([], depth));

    private IEnumerable<Mark> Foot(int page, int pages)
    {
        var y = height - Margin;
        yield return new Stroke(Margin, y - FootDepth + 6, width - Margin, y - FootDepth + 6, 0.5);
        foreach (var mark in type.Set(content.Made, Margin, y - FootDepth + 8, Room - 70, SmallSize).Marks) yield return mark;
        var number = string.Create(CultureInfo.InvariantCulture, $"Page {page} of {pages}");
        yield return new Label(width - Margin, y - FootDepth + 8 + SmallSize, number, SmallSize, Bold: true, Anchor: Anchor.End);
    }
}
