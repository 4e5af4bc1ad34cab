using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>Lays a sheet's content out on pages: points, from the upper left corner. Values only; nothing is drawn here.</summary>
internal sealed class SheetLayout
{
    private const double Margin = 26;
    private const double Alley = 14;
    private const double FootDepth = 18;
    private const double TitleSize = 14;
    private const double LeadSize = 9.2;
    private const double StopSize = 8.6;
    private const double TextSize = 8.2;
    private const double PictureScale = 0.66;
    private const double NoteLine = 18;
    private const double LeastNotes = 2 * NoteLine;

    /// <summary>Both sides of one leaf. The picture shows nothing that is not in the words, so it gives way where it would need more.</summary>
    private const int WantedPages = 2;

    private readonly SheetContent content;
    private readonly SheetType type;
    private readonly double width;
    private readonly double height;
    private readonly SheetFlow flow;

    private SheetLayout(SheetContent content, Ruler ruler)
    {
        (this.content, type) = (content, new(ruler));
        (width, height) = content.Letter ? (612, 792) : (595, 842);
        flow = new([Margin, Margin + ColumnRoom + Alley], Margin, height - Margin - FootDepth);
    }

    private double Room => width - 2 * Margin;

    private double ColumnRoom => (Room - Alley) / 2;

    /// <returns>A drawing a page.</returns>
    public static IReadOnlyList<Drawing> Pages(SheetContent content, Ruler ruler)
    {
        var pages = new SheetLayout(content, ruler).Pages();
        if (pages.Count <= WantedPages || content.Picture is null) return pages;
        var wordsOnly = new SheetLayout(content with { Picture = null }, ruler).Pages();
        return wordsOnly.Count <= WantedPages ? wordsOnly : pages;
    }

    private IReadOnlyList<Drawing> Pages()
    {
        Head();
        if (content.Picture is { } picture) Picture(picture.ForSheet(Room / PictureScale));
        var pieces = new SheetPieces(type, ColumnRoom);
        flow.InColumns([.. content.Places.SelectMany(place => place.Jobs.Select(pieces.Job).Prepend(pieces.Heading(place.Name)))]);
        flow.InColumns([.. content.Lists.SelectMany(pieces.List)]);
        Notes(pieces.Heading(content.Speech.Say("sheet.notes")));
        return [.. flow.Pages.Select((page, at) => new Drawing(width, height, [.. page, .. Foot(at + 1, flow.Pages.Count)]))];
    }

    private void Head()
    {
        Text(content.Title, TitleSize, bold: true);
        foreach (var line in content.Lead) Text(line, LeadSize, bold: true);
        if (content.Stops.Count > 0) flow.Wide(new SheetPieces(type, Room).Heading(content.Speech.Say("sheet.stops")));
        foreach (var line in content.Stops) Text(line, StopSize, bold: true);
        foreach (var line in content.Why) Text(line, TextSize);
    }

    private void Text(string text, double size, bool bold = false)
    {
        var (marks, depth) = type.Set(text, 0, 0, Room, size, bold);
        flow.Wide(new(marks, depth + 1));
    }

    private void Picture(Drawing picture) =>
        flow.Wide(new([.. picture.Marks.Select(mark => SheetFlow.Moved(mark, 0, 2, PictureScale))], picture.Height * PictureScale + 2));

    /// <summary>What is left of the last column, ruled; at the least a few lines.</summary>
    private void Notes(Piece heading)
    {
        flow.InColumns([heading, new([], LeastNotes, WithNext: false)]);
        var count = (int)((flow.Left + LeastNotes) / NoteLine);
        flow.InColumns([new([.. Enumerable.Range(1, count).Select(at => new Stroke(0, at * NoteLine - LeastNotes, ColumnRoom, at * NoteLine - LeastNotes, 0.4))], 0)]);
    }

    private IEnumerable<Mark> Foot(int page, int pages)
    {
        var y = height - Margin - FootDepth + 4;
        yield return new Stroke(Margin, y, width - Margin, y, 0.5);
        foreach (var mark in type.Set(content.Made, Margin, y + 2, Room - 64, SheetPieces.SmallSize).Marks) yield return mark;
        var number = content.Speech.Say("sheet.page", ("page", page), ("pages", pages));
        yield return new Label(width - Margin, y + 2 + SheetPieces.SmallSize, number, SheetPieces.SmallSize, Bold: true, Anchor: Anchor.End);
    }
}
