namespace StormClock.Core.Garden;

/// <summary>
/// An area on the gardener's own drawing: a rectangle on the grid of its site, which begins at the upper left, with the top away from
/// the reader. In whole decimetres, which no step to and fro can blur.
/// </summary>
/// <param name="LeftDm">From the left end of the grid, 0 or more; <paramref name="TopDm"/> likewise from its top.</param>
/// <param name="WidthDm">To the right, at least 1; <paramref name="DepthDm"/> likewise towards the reader.</param>
public sealed record PlotRect(int LeftDm, int TopDm, int WidthDm, int DepthDm)
{
    public int RightDm => LeftDm + WidthDm;

    public int BottomDm => TopDm + DepthDm;

    /// <summary>Whether it lies on a grid, all of it.</summary>
    public bool IsOnGrid => LeftDm >= 0 && TopDm >= 0 && WidthDm >= 1 && DepthDm >= 1 && RightDm <= PlotGrid.MostDm && BottomDm <= PlotGrid.MostDm;
}

/// <summary>Where an item stands on the grid of its site, decimetres to the right and towards the reader.</summary>
public sealed record PlotSpot(int XDm, int YDm)
{
    public bool IsOnGrid => XDm is >= 0 and <= PlotGrid.MostDm && YDm is >= 0 and <= PlotGrid.MostDm;
}

public static class PlotGrid
{
    /// <summary>A grid ends here each way: 1000 m, larger than any garden (C).</summary>
    public const int MostDm = 10_000;
}
