using StormClock.Core.Garden;
using StormClock.Service.Pictures;

namespace StormClock.Service.Plots;

/// <summary>The gardener's own drawing of a site: sketch, grid, areas, items, each above the one before.</summary>
internal static class PlotDrawing
{
    private const double Gap = 4;

    /// <param name="chosen">Id of the area or item that is being placed; null for none. Ids of both sorts may be alike.</param>
    public static Drawing Of(PlotModel model, PlotScale scale, PlotSketch? sketch, (bool IsArea, string Id)? chosen = null) => new(
        scale.WidthPx,
        scale.DepthPx,
        [
            .. sketch is null ? Array.Empty<Mark>() : [new Photograph(scale.X(0), scale.Y(0), sketch.WidthDm * scale.PxPerDm, sketch.DepthDm * scale.PxPerDm, sketch.Address)],
            .. Grid(scale),
            .. model.Places.SelectMany(place => Outline(place, scale, chosen == (true, place.Area.Id))),
            .. model.Places.SelectMany(place => Name(place, scale)),
            .. model.Things.SelectMany(thing => Item(thing, scale, chosen == (false, thing.Item.Id))),
        ]);

    /// <summary>Lines with their metres from the upper left, where the unit stands.</summary>
    private static IEnumerable<Mark> Grid(PlotScale scale)
    {
        var (right, bottom, letters) = (scale.X(scale.Frame.WidthDm), scale.Y(scale.Frame.DepthDm), scale.Layout.LettersPx);
        yield return new Label(PlotScale.LeftPx - 2.5 * Gap, PlotScale.TopPx - 8, "m", letters, Anchor: Anchor.End);
        for (var dm = 0; dm <= scale.Frame.WidthDm; dm += scale.StepDm)
        {
            yield return new Stroke(scale.X(dm), scale.Y(0), scale.X(dm), bottom, dm == 0 ? 1.5 : 0.4);
            yield return new Label(scale.X(dm), PlotScale.TopPx - 8, PlotMarks.Of(dm / 10), letters, Anchor: Anchor.Middle);
        }

        for (var dm = 0; dm <= scale.Frame.DepthDm; dm += scale.StepDm)
        {
            yield return new Stroke(scale.X(0), scale.Y(dm), right, scale.Y(dm), dm == 0 ? 1.5 : 0.4);
            if (dm > 0) yield return new Label(PlotScale.LeftPx - Gap, scale.Y(dm) + letters * 0.36, PlotMarks.Of(dm / 10), letters, Anchor: Anchor.End);
        }
    }

    private static IEnumerable<Mark> Outline(PlotPlace place, PlotScale scale, bool chosen)
    {
        if (place.Area.Plot is not { } plot) return [];
        return [new Polygon([At(plot.LeftDm, plot.TopDm), At(plot.RightDm, plot.TopDm), At(plot.RightDm, plot.BottomDm), At(plot.LeftDm, plot.BottomDm)], Fill.None, chosen ? 5 : 2)];

        (double X, double Y) At(int x, int y) => (scale.X(x), scale.Y(y));
    }

    /// <summary>In the upper left of the area, on paper of its own: the letter always, the name as far as there is room for some of it.</summary>
    private static IEnumerable<Mark> Name(PlotPlace place, PlotScale scale)
    {
        if (place.Area.Plot is not { } plot) return [];
        var letters = scale.Layout.LettersPx;
        var room = plot.WidthDm * scale.PxPerDm - 2 * Gap;
        var whole = $"{place.Letter} {place.Area.Name}";
        var text = Lettering.Width(place.Letter, letters) + 5 * letters > room && Lettering.Width(whole, letters) > room ? place.Letter : Lettering.Cut(whole, letters, room);
        var (x, y) = (scale.X(plot.LeftDm) + 2, scale.Y(plot.TopDm) + 2);
        return [new Box(x, y, Lettering.Width(text, letters) + Gap, letters + Gap, Fill.Paper), new Label(x + 2, y + letters, text, letters, Bold: true)];
    }

    private static IEnumerable<Mark> Item(PlotThing thing, PlotScale scale, bool chosen)
    {
        if (thing.Item.Spot is not { } spot) return [];
        var (number, x, y) = (PlotMarks.Of(thing.Number), scale.X(spot.XDm), scale.Y(spot.YDm));
        return [.. chosen ? PlotMarks.Chosen(number, x, y, scale.Layout) : [], .. PlotMarks.Of(number, thing.State, x, y, scale.Layout)];
    }
}
