using StormClock.Service.Messages;
using StormClock.Service.Plots;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>What is said of a drawing.</summary>
internal static class PlotWords
{
    private const double FeetPerMetre = 1 / 0.3048;

    public static string Title(PlotModel model, Speech speech) => speech.Say("plot.title", ("site", model.Site.Name));

    public static string Description(PlotModel model, Speech speech) => speech.Say(
        "plot.description",
        ("areas", model.Places.Count(place => place.Area.Plot is not null)),
        ("things", model.Things.Count(thing => thing.Item.Spot is not null)),
        ("open", model.Things.Count(thing => thing.Item.Spot is not null && thing.State == PlotState.Open)));

    /// <summary>How much one square of the grid is.</summary>
    public static string Scale(PlotScale scale, Speech speech)
    {
        var metres = scale.StepDm / 10;
        return speech.Units == Core.Garden.UnitSystem.UsCustomary
            ? speech.Say("plot.scale.feet", ("metres", metres), ("feet", (int)Math.Round(metres * FeetPerMetre)))
            : speech.Say("plot.scale", ("metres", metres));
    }

    public static string Key(PlotState state, Speech speech) => Words.Capital($"{speech.Word("plot-shape", state)}: {speech.Word("plot-state", state)}");
}
