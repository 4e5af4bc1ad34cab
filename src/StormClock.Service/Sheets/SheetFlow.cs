using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>What stays together on one page.</summary>
/// <param name="Marks">From its own upper left corner.</param>
/// <param name="WithNext">A heading: never the last in a column.</param>
internal sealed record Piece(IReadOnlyList<Mark> Marks, double Depth, bool WithNext = false);

/// <summary>
/// Puts pieces on as many pages as they need: first those over the full width, then the rest in two columns. No piece is cut
/// in two.
/// </summary>
internal sealed class SheetFlow
{
    private readonly List<List<Mark>> pages = [[]];
    private readonly IReadOnlyList<double> columns;
    private readonly double top;
    private readonly double bottom;
    private double y;
    private double columnTop;
    private int column;

    /// <param name="columns">Where the columns begin.</param>
    public SheetFlow(IReadOnlyList<double> columns, double top, double bottom)
    {
        (this.columns, this.top, this.bottom) = (columns, top, bottom);
        y = columnTop = top;
    }

    public IReadOnlyList<IReadOnlyList<Mark>> Pages => pages;

    /// <summary>How much of the column is free.</summary>
    public double Left => bottom - y;

    public void Wide(Piece piece)
    {
        if (y > top && piece.Depth > Left) NextPage();
        Put(piece);
        columnTop = y;
    }

    /// <summary>What goes on in another column has its heading there again.</summary>
    public void InColumns(IReadOnlyList<Piece> pieces)
    {
        Piece? heading = null;
        for (var at = 0; at < pieces.Count; at++)
        {
            var piece = pieces[at];
            if (y > columnTop && DepthWithNext(pieces, at) > Left)
            {
                NextColumn();
                if (heading is not null && !piece.WithNext) Put(heading);
            }

            if (piece.WithNext) heading = piece;
            Put(piece);
        }
    }

    public static Mark Moved(Mark mark, double x, double y, double scale = 1) => mark switch
    {
        Box box => box with { X = x + box.X * scale, Y = y + box.Y * scale, Width = box.Width * scale, Height = box.Height * scale },
        Stroke line => line with { X1 = x + line.X1 * scale, Y1 = y + line.Y1 * scale, X2 = x + line.X2 * scale, Y2 = y + line.Y2 * scale, Width = line.Width * scale },
        Label label => label with { X = x + label.X * scale, Y = y + label.Y * scale, Size = label.Size * scale },
        Polygon polygon => polygon with { Corners = [.. polygon.Corners.Select(corner => (x + corner.X * scale, y + corner.Y * scale))] },
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, null),
    };

    private void Put(Piece piece)
    {
        pages[^1].AddRange(piece.Marks.Select(mark => Moved(mark, columns[column], y)));
        y += piece.Depth;
    }

    private void NextColumn()
    {
        if (column == columns.Count - 1)
        {
            NextPage();
            return;
        }

        column++;
        y = columnTop;
    }

    private void NextPage()
    {
        pages.Add([]);
        column = 0;
        y = columnTop = top;
    }

    private static double DepthWithNext(IReadOnlyList<Piece> pieces, int at)
    {
        var depth = pieces[at].Depth;
        while (pieces[at].WithNext && at + 1 < pieces.Count) depth += pieces[++at].Depth;
        return depth;
    }
}
