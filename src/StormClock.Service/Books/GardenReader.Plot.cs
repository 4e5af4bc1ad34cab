using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Where areas and items lie on the gardener's own drawing.</summary>
public sealed partial class GardenReader
{
    private static PlotRect? Plot(YamlFields fields)
    {
        if (Metres(fields, "plot", ["left", "top", "width", "depth"], "[2, 0.5, 4, 3]") is not [var left, var top, var width, var depth]) return null;

        var plot = new PlotRect(left, top, width, depth);
        if (plot.IsOnGrid) return plot;

        fields.Fault("plot", width < 1 || depth < 1
            ? "has no width or no depth; write at least 0.1 for both, e.g. plot: [2, 0.5, 4, 3]"
            : $"reaches past {PlotText.MostM} m; left and width, and top and depth, may be {PlotText.MostM} together");
        return null;
    }

    private static PlotSpot? Spot(YamlFields fields) => Metres(fields, "spot", ["x", "y"], "[3.5, 1.2]") is [var x, var y] ? new(x, y) : null;

    /// <returns>Decimetres; null when the key is absent, or wrong and told.</returns>
    private static int[]? Metres(YamlFields fields, string key, string[] names, string example)
    {
        if (fields.Row(key, names.Length, $"{names.Length} numbers in metres, {string.Join(", ", names)}, with a point before decimals", example) is not { } words) return null;

        var read = names.Zip(words, (name, word) => (Name: name, Word: word, Dm: PlotText.Decimetres(word.Text))).ToList();
        foreach (var (name, word, _) in read.Where(one => one.Dm is null && one.Word.Text.Length > 0))
            fields.FaultAt(word.Line, key, $"has '{YamlFields.Shown(word.Text)}' for {name}; that must be metres from 0 to {PlotText.MostM} in steps of 0.1, e.g. {key}: {example}");

        return read.TrueForAll(one => one.Dm is not null) ? [.. read.Select(one => one.Dm!.Value)] : null;
    }
}
