using System.Globalization;
using StormClock.Core.Garden;

namespace StormClock.Service.Plots;

/// <summary>How much of a site's grid a drawing shows, from its upper left on, in decimetres.</summary>
public sealed record PlotFrame(int WidthDm, int DepthDm)
{
    /// <summary>Of an empty drawing each way: a small garden fits (C).</summary>
    private const int LeastDm = 120;

    /// <summary>Beyond the last thing, for half of its mark.</summary>
    private const int EdgeDm = 10;

    /// <summary>Beyond the last thing while something is placed (C).</summary>
    private const int RoomDm = 50;

    /// <summary>All that is placed on a site, and its sketch.</summary>
    /// <param name="room">With room for what is placed next.</param>
    public static PlotFrame Of(PlotModel model, PlotSketch? sketch, bool room = false)
    {
        var beyondDm = room ? RoomDm : EdgeDm;
        var areas = model.Places.Select(place => place.Area.Plot).OfType<PlotRect>().ToList();
        var spots = model.Things.Select(thing => thing.Item.Spot).OfType<PlotSpot>().ToList();
        return new(
            With(areas.Select(area => area.RightDm).Concat(spots.Select(spot => spot.XDm)), sketch?.WidthDm, beyondDm),
            With(areas.Select(area => area.BottomDm).Concat(spots.Select(spot => spot.YDm)), sketch?.DepthDm, beyondDm));
    }

    /// <summary>As a form carries it, such as <c>250x150</c>: a press means what the drawing showed, whatever was placed since. Null for anything else.</summary>
    public static PlotFrame? Parse(string text) =>
        text.Split('x') is [var width, var depth] && Side(width) is { } widthDm && Side(depth) is { } depthDm ? new(widthDm, depthDm) : null;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{WidthDm}x{DepthDm}");

    private static int? Side(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var dm) && dm is >= LeastDm and <= PlotGrid.MostDm ? dm : null;

    private static int With(IEnumerable<int> placedDm, int? sketchDm, int beyondDm)
    {
        var all = Math.Max(placedDm.DefaultIfEmpty().Max() + beyondDm, sketchDm ?? 0);
        return Math.Clamp((all + 9) / 10 * 10, LeastDm, PlotGrid.MostDm);
    }
}
