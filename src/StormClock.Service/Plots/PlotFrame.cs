using System.Globalization;
using StormClock.Core.Garden;

namespace StormClock.Service.Plots;

/// <summary>How much of a site's grid a drawing shows, from its upper left on, in decimetres.</summary>
public sealed record PlotFrame(int WidthDm, int DepthDm)
{
    /// <summary>Of an empty drawing each way: a small garden fits (C).</summary>
    private const int LeastDm = 120;

    private const int StepDm = 50;

    /// <summary>All that is placed on a site, and its sketch, with room beyond for what is placed next.</summary>
    public static PlotFrame Of(PlotModel model, PlotSketch? sketch)
    {
        var areas = model.Places.Select(place => place.Area.Plot).OfType<PlotRect>().ToList();
        var spots = model.Things.Select(thing => thing.Item.Spot).OfType<PlotSpot>().ToList();
        return new(
            With(areas.Select(area => area.RightDm).Concat(spots.Select(spot => spot.XDm)), sketch?.WidthDm),
            With(areas.Select(area => area.BottomDm).Concat(spots.Select(spot => spot.YDm)), sketch?.DepthDm));
    }

    /// <summary>As a form carries it, such as <c>250x150</c>: a press means what the drawing showed, whatever was placed since. Null for anything else.</summary>
    public static PlotFrame? Parse(string text) =>
        text.Split('x') is [var width, var depth] && Side(width) is { } widthDm && Side(depth) is { } depthDm ? new(widthDm, depthDm) : null;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{WidthDm}x{DepthDm}");

    private static int? Side(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var dm) && dm is >= LeastDm and <= PlotGrid.MostDm ? dm : null;

    private static int With(IEnumerable<int> placedDm, int? sketchDm)
    {
        var placed = placedDm.DefaultIfEmpty().Max() + StepDm / 2;
        var all = Math.Max(placed, sketchDm ?? 0);
        return Math.Clamp((all + StepDm - 1) / StepDm * StepDm, LeastDm, PlotGrid.MostDm);
    }
}
