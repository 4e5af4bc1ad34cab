using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>What stays together on one page.</summary>
/// <param name="Marks">From its own upper edge, at the page's full width.</param>
/// <param name="WithNext">Never the last on a page.</param>
internal sealed record Piece(IReadOnlyList<Mark> Marks, double Depth, bool WithNext = false);

/// <summary>Puts pieces on as many pages as they need. No piece is cut in two.</summary>
internal static class SheetFlow
{
    /// <returns>The pages, each with its pieces and the depth at which they begin.</returns>
    public static IReadOnlyList<IReadOnlyList<(double Top, Piece Piece)>> Pages(IReadOnlyList<Piece> pieces, double top, double bottom)
    {
        var pages = new List<List<(double, Piece)>> { new() };
        var y = top;
        for (var at = 0; at < pieces.Count; at++)
        {
            if (y > top && y + DepthWithNext(pieces, at) > bottom)
            {
                pages.Add([]);
                y = top;
            }

            pages[^1].Add((y, pieces[at]));
            y += pieces[at].Depth;
        }

        return pages;
    }

    public static Mark Moved(Mark mark, double x, double y, double scale = 1) => mark switch
    {
        Box box => box with { X = x + box.X * scale, Y = y + box.Y * scale, Width = box.Width * scale, Height = box.Height * scale },
        Stroke line => line with { X1 = x + line.X1 * scale, Y1 = y + line.Y1 * scale, X2 = x + line.X2 * scale, Y2 = y + line.Y2 * scale, Width = line.Width * scale },
        Label label => label with { X = x + label.X * scale, Y = y + label.Y * scale, Size = label.Size * scale },
        Polygon polygon => polygon with { Corners = [.. polygon.Corners.Select(corner => (x + corner.X * scale, y + corner.Y * scale))] },
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, null),
    };

    private static double DepthWithNext(IReadOnlyList<Piece> pieces, int at)
    {
        var depth = pieces[at].Depth;
        while (pieces[at].WithNext && at + 1 < pieces.Count) depth += pieces[++at].Depth;
        return depth;
    }
}
