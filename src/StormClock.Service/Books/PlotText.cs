using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Places on the gardener's own drawing, as books, tables and forms write them: metres in steps of 0.1.</summary>
internal static class PlotText
{
    public const int MostM = PlotGrid.MostDm / 10;

    /// <summary>A number of metres from 0 to <see cref="MostM"/>, as decimetres; null for anything else, steps finer than 0.1 m included.</summary>
    public static int? Decimetres(string text) =>
        Quantity.Number(text) is { } metres and >= 0 and <= MostM && Math.Round(metres * 10) is var whole && Math.Abs(metres * 10 - whole) < 1e-9 ? (int)whole : null;

    public static string Metres(int dm) => ItemText.Number(dm / 10.0);

    public static string? Of(PlotRect? plot) => plot is null ? null : $"[{Metres(plot.LeftDm)}, {Metres(plot.TopDm)}, {Metres(plot.WidthDm)}, {Metres(plot.DepthDm)}]";

    public static string? Of(PlotSpot? spot) => spot is null ? null : $"[{Metres(spot.XDm)}, {Metres(spot.YDm)}]";
}
