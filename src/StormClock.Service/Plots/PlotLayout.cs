using StormClock.Core.Garden;

namespace StormClock.Service.Plots;

/// <summary>How a drawing is laid out on a phone or a wide screen. Shown at this size and no other, so that letters keep theirs and a press can be measured.</summary>
/// <param name="Name">As addresses and forms carry it.</param>
/// <param name="LettersPx">Height of letters.</param>
/// <param name="MarkPx">Side of a mark.</param>
internal sealed record PlotLayout(string Name, double MostWidthPx, double MostDepthPx, double LettersPx, double MarkPx)
{
    /// <summary>A phone of 360 less the page's margins.</summary>
    public static PlotLayout Narrow { get; } = new("narrow", 336, 560, 12, 20);

    public static PlotLayout Wide { get; } = new("wide", 900, 760, 14, 26);

    public static IReadOnlyList<PlotLayout> All { get; } = [Narrow, Wide];
}

/// <summary>Between the metres of a grid and the pixels of a drawing.</summary>
internal sealed record PlotScale(PlotFrame Frame, PlotLayout Layout)
{
    /// <summary>For the figures along the edges.</summary>
    public const double LeftPx = 34;

    public const double TopPx = 26;

    private const double EndPx = 16;

    /// <summary>Between two lines of the grid, so that figures beside them do not touch.</summary>
    private const double LeastStepPx = 38;

    private static readonly int[] StepsDm = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

    public double PxPerDm => Math.Min((Layout.MostWidthPx - LeftPx - EndPx) / Frame.WidthDm, (Layout.MostDepthPx - TopPx - EndPx) / Frame.DepthDm);

    /// <summary>Whole pixels, as an image has them.</summary>
    public int WidthPx => (int)Math.Ceiling(X(Frame.WidthDm) + EndPx);

    public int DepthPx => (int)Math.Ceiling(Y(Frame.DepthDm) + EndPx);

    /// <summary>Of a sketch below the drawing, whose upper left is that of the grid; what would reach beyond the drawing is cut off.</summary>
    public (int WidthPx, int DepthPx) SizeOf(PlotSketch sketch) =>
        ((int)Math.Round(Math.Min(sketch.WidthDm, Frame.WidthDm) * PxPerDm), (int)Math.Round(Math.Min(sketch.DepthDm, Frame.DepthDm) * PxPerDm));

    public int StepDm => StepsDm.FirstOrDefault(step => step * PxPerDm >= LeastStepPx, StepsDm[^1]);

    public double X(double dm) => LeftPx + dm * PxPerDm;

    public double Y(double dm) => TopPx + dm * PxPerDm;

    /// <summary>
    /// Where on the grid a press on the drawing was meant; one beside the grid means its edge. Null outside of the drawing, and in its very
    /// corner: that is what browsers send when the button is pressed by a key.
    /// </summary>
    public PlotSpot? At(int xPx, int yPx)
    {
        if ((xPx, yPx) is (0, 0) || xPx < 0 || yPx < 0 || xPx >= WidthPx || yPx >= DepthPx) return null;
        return new(Dm(xPx - LeftPx, Frame.WidthDm), Dm(yPx - TopPx, Frame.DepthDm));
    }

    private int Dm(double px, int most) => Math.Clamp((int)Math.Round(px / PxPerDm), 0, most);
}
