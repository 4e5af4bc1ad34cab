using System.Text;

namespace StormClock.Service.Books.Csv;

/// <summary>An empty table to begin with: every column, and three invented rows that show how cells are filled.</summary>
internal static class ItemTemplate
{
    private static readonly Dictionary<string, string>[] Examples =
    [
        new()
        {
            ["id"] = "bay-tubs", ["name"] = "Bay trees in tubs, by the door", ["kind"] = "potted_tree", ["area"] = "yard", ["count"] = "2", ["value"] = "140",
            ["height"] = "5 ft 6 in", ["width"] = "2 ft", ["base"] = "14 in", ["mass"] = "48 lb", ["pot_height"] = "16 in", ["standing"] = "free", ["stands_on"] = "paving",
            ["endangers"] = "own_window", ["jobs"] = "lay_flat:20:2",
        },
        new()
        {
            ["id"] = "tomato-row", ["name"] = "Tomatoes on canes", ["kind"] = "tall_crop", ["area"] = "yard", ["count"] = "12", ["height"] = "1.6 m", ["standing"] = "staked",
            ["crop"] = "tomato", ["ripe"] = "30 %", ["mature"] = "40 %", ["harvest_value"] = "45", ["jobs"] = "pick:35 tie:25",
        },
        new()
        {
            ["id"] = "stone-trough", ["name"] = "Stone trough, left as it is", ["kind"] = "trough", ["area"] = "yard", ["count"] = "1", ["mass"] = "160 kg", ["jobs"] = "none",
        },
    ];

    public static string Text()
    {
        var text = new StringBuilder();
        ItemTableWriter.Line(text, GardenKeys.Item);
        foreach (var row in Examples) ItemTableWriter.Line(text, GardenKeys.Item.Select(key => row.GetValueOrDefault(key, "")));
        return text.ToString();
    }
}
