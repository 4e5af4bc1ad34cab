using System.Globalization;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Plots;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>The ways to move something by one step, for whoever presses keys.</summary>
internal enum PlotNudge { Left, Right, Up, Down, Wider, Narrower, Deeper, Shallower }

/// <summary>Reads where something shall be: pressed on the drawing, written as metres, or moved by steps from where it is.</summary>
internal static class PlotForm
{
    /// <summary>Steps of the buttons, decimetres.</summary>
    public static IReadOnlyList<int> StepsDm { get; } = [10, 1];

    /// <summary>The corner that a press gives: the far one needs the near one placed before.</summary>
    public const string Far = "far";

    /// <summary>Of an area whose second corner is not pressed yet.</summary>
    private static readonly PlotRect Begun = new(0, 0, 30, 20);

    private static readonly Dictionary<string, PlotNudge> Nudges = Enum.GetValues<PlotNudge>().ToDictionary(Token);

    /// <summary>Of a form, each with the key of its label.</summary>
    public static IReadOnlyList<(string Name, string Label)> FieldsOf(PlotPick pick) =>
        pick.IsArea ? [("left", "plot.left"), ("top", "plot.top"), ("width", "plot.width"), ("depth", "plot.depth")] : [("x", "plot.left"), ("y", "plot.top")];

    public static IEnumerable<PlotNudge> NudgesOf(PlotPick pick) => Nudges.Values.Where(nudge => pick.IsArea || nudge <= PlotNudge.Down);

    public static string Token(PlotNudge nudge) => nudge.ToString().ToLowerInvariant();

    /// <summary>The layout of the drawing that was pressed; null for any other form.</summary>
    public static PlotLayout? Pressed(IFormCollection form) => PlotLayout.All.FirstOrDefault(layout => form.ContainsKey($"{layout.Name}.x") || form.ContainsKey($"{layout.Name}.y"));

    public static ReadResult<PlotWish> Read(IFormCollection form, PlotPick pick, Speech speech)
    {
        if (Pressed(form) is { } layout) return OfPress(form, layout, pick, speech);
        return form["press"].ToString() switch
        {
            "off" => new PlotWish(null, null),
            "fields" => OfFields(form, pick, speech),
            var press => OfNudge(press, pick, speech),
        };
    }

    private static ReadResult<PlotWish> OfPress(IFormCollection form, PlotLayout layout, PlotPick pick, Speech speech)
    {
        if (PlotFrame.Parse(form["frame"].ToString()) is not { } frame || !Pixel(form[$"{layout.Name}.x"], out var x) || !Pixel(form[$"{layout.Name}.y"], out var y)
            || new PlotScale(frame, layout).At(x, y) is not { } spot) return Bad(speech.Say("plot.fault.press"));
        if (!pick.IsArea) return new PlotWish(null, spot);

        return OnGrid(form["corner"] == Far && pick.Plot is { } plot ? Between(plot, spot) : (pick.Plot ?? Begun) with { LeftDm = spot.XDm, TopDm = spot.YDm }, speech);
    }

    /// <summary>From the corner that is placed to the other one, whichever way that lies.</summary>
    private static PlotRect Between(PlotRect plot, PlotSpot other)
    {
        var (left, top) = (Math.Min(plot.LeftDm, other.XDm), Math.Min(plot.TopDm, other.YDm));
        return new(left, top, Math.Max(1, Math.Max(plot.LeftDm, other.XDm) - left), Math.Max(1, Math.Max(plot.TopDm, other.YDm) - top));
    }

    private static ReadResult<PlotWish> OfFields(IFormCollection form, PlotPick pick, Speech speech)
    {
        var read = FieldsOf(pick).Select(field => (field.Label, Typed: form[field.Name].ToString().Trim(), Dm: PlotText.Decimetres(form[field.Name].ToString().Trim()))).ToList();
        var faults = read.Where(field => field.Dm is null).Select(field => Fault(speech.Say("plot.fault.number", ("field", speech.Say(field.Label)), ("typed", YamlFields.Shown(field.Typed)), ("most", PlotText.MostM)))).ToList();
        if (faults.Count > 0) return ReadResult.Bad<PlotWish>(faults);

        int[] dm = [.. read.Select(field => field.Dm!.Value)];
        return pick.IsArea ? OnGrid(new PlotRect(dm[0], dm[1], dm[2], dm[3]), speech) : new PlotWish(null, new(dm[0], dm[1]));
    }

    private static ReadResult<PlotWish> OfNudge(string press, PlotPick pick, Speech speech)
    {
        if (press.Split(' ') is not [var way, var step] || !Nudges.TryGetValue(way, out var nudge) || !NudgesOf(pick).Contains(nudge)
            || !int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var by) || !StepsDm.Contains(by)) return Bad(speech.Say("notice.unread"));
        if (pick.Plot is { } plot) return OnGrid(Nudged(plot, nudge, by), speech);
        return pick.Spot is { } spot ? OnGrid(Nudged(spot, nudge, by), speech) : Bad(speech.Say("plot.fault.unplaced"));
    }

    private static PlotRect Nudged(PlotRect plot, PlotNudge nudge, int by) => nudge switch
    {
        PlotNudge.Left => plot with { LeftDm = plot.LeftDm - by },
        PlotNudge.Right => plot with { LeftDm = plot.LeftDm + by },
        PlotNudge.Up => plot with { TopDm = plot.TopDm - by },
        PlotNudge.Down => plot with { TopDm = plot.TopDm + by },
        PlotNudge.Wider => plot with { WidthDm = plot.WidthDm + by },
        PlotNudge.Narrower => plot with { WidthDm = plot.WidthDm - by },
        PlotNudge.Deeper => plot with { DepthDm = plot.DepthDm + by },
        _ => plot with { DepthDm = plot.DepthDm - by },
    };

    private static PlotSpot Nudged(PlotSpot spot, PlotNudge nudge, int by) => nudge switch
    {
        PlotNudge.Left => spot with { XDm = spot.XDm - by },
        PlotNudge.Right => spot with { XDm = spot.XDm + by },
        PlotNudge.Up => spot with { YDm = spot.YDm - by },
        _ => spot with { YDm = spot.YDm + by },
    };

    private static ReadResult<PlotWish> OnGrid(PlotRect plot, Speech speech) => plot.IsOnGrid ? new PlotWish(plot, null) : Bad(speech.Say("plot.fault.beyond", ("most", PlotText.MostM)));

    private static ReadResult<PlotWish> OnGrid(PlotSpot spot, Speech speech) => spot.IsOnGrid ? new PlotWish(null, spot) : Bad(speech.Say("plot.fault.beyond", ("most", PlotText.MostM)));

    private static bool Pixel(string? text, out int px) => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out px);

    private static ReadResult<PlotWish> Bad(string reason) => Fault(reason);

    private static ReadFault Fault(string reason) => new("plot", reason);
}
