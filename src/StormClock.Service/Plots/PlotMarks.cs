using System.Globalization;
using StormClock.Service.Pictures;

namespace StormClock.Service.Plots;

/// <summary>The marks of items: a number in a shape that tells the state, all of it ink on paper but for open work.</summary>
internal static class PlotMarks
{
    private const double Edge = 2;

    /// <summary>Corners of a ring: it looks round at any size used here.</summary>
    private const int RingCorners = 32;

    /// <summary>Around the middle of where the item stands.</summary>
    public static IEnumerable<Mark> Of(string number, PlotState state, double x, double y, PlotLayout layout)
    {
        var half = HalfOf(number, layout);

        // Paper around the dark square, so that two that overlap can still be told apart.
        IEnumerable<Mark> shape = state switch
        {
            PlotState.Open => [Square(x, y, half + 1.5, Fill.Paper, 0), Square(x, y, half, Fill.Ink, 0)],
            PlotState.Done => [Ring(x, y, half + 1, Fill.Paper, Edge)],
            PlotState.Later => [Diamond(x, y, half * 1.4)],
            _ => [Square(x, y, half, Fill.Paper, 0), new Stroke(x - half, y + half - Edge / 2, x + half, y + half - Edge / 2, Edge)],
        };
        return shape.Append(new Label(x, y + layout.LettersPx * 0.36, number, layout.LettersPx, Bold: true, Anchor.Middle, OnInk: state == PlotState.Open));
    }

    /// <summary>A mark by itself, for a line of text.</summary>
    public static Drawing Sign(string number, PlotState state)
    {
        var side = 2 * (HalfOf(number, PlotLayout.Narrow) * 1.4 + Edge);
        return new(side, side, [.. Of(number, state, side / 2, side / 2, PlotLayout.Narrow)]);
    }

    public static string Of(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Around a mark that is being placed.</summary>
    public static IEnumerable<Mark> Chosen(string number, double x, double y, PlotLayout layout)
    {
        var radius = HalfOf(number, layout) * 1.4 + 5;
        return [Ring(x, y, radius, Fill.None, 3)];
    }

    private static double HalfOf(string number, PlotLayout layout) => Math.Max(layout.MarkPx, Lettering.Width(number, layout.LettersPx) + 6) / 2;

    private static Polygon Square(double x, double y, double half, Fill fill, double edge) => new([(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)], fill, edge);

    private static Polygon Diamond(double x, double y, double half) => new([(x, y - half), (x + half, y), (x, y + half), (x - half, y)], Fill.Paper, Edge);

    private static Polygon Ring(double x, double y, double radius, Fill fill, double edge) =>
        new([.. Enumerable.Range(0, RingCorners).Select(corner => corner * 2 * Math.PI / RingCorners).Select(angle => (x + radius * Math.Cos(angle), y + radius * Math.Sin(angle)))], fill, edge);
}
