using System.Text;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Csv;

/// <summary>Writes a book's items as a table, one row an item, with only the columns that are used.</summary>
internal static class ItemTableWriter
{
    /// <summary>Stay in every table, so that what may be filled in can be seen.</summary>
    private static readonly string[] Always = ["id", "name", "kind", "area", "count", "value", "height", "width", "base", "mass", "endangers", "jobs"];

    public static string Write(GardenBook book)
    {
        var rows = book.Items.Select(item => Cells(item).Where(cell => cell.Value is not null).ToDictionary(cell => cell.Key, cell => cell.Value!)).ToList();
        var columns = GardenKeys.Item.Where(key => Always.Contains(key) || rows.Exists(row => row.ContainsKey(key))).ToList();
        var text = new StringBuilder();
        Line(text, columns);
        foreach (var row in rows) Line(text, columns.Select(key => row.GetValueOrDefault(key, "")));
        return text.ToString();
    }

    /// <summary>What of the book's items has no place in a table: one line an item, in order.</summary>
    public static IReadOnlyList<string> Lost(GardenBook book) =>
        [.. book.Items.Select(item => (item.Id, Lost: string.Join(", ", Lost(item)))).Where(item => item.Lost.Length > 0).Select(item => $"{item.Id}: {item.Lost}")];

    internal static void Line(StringBuilder text, IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(CsvText.Cell)).Append("\r\n");

    private static IEnumerable<(string Key, string? Value)> Cells(Item item) =>
    [
        ("id", item.Id), ("name", item.Name), ("kind", item.Kind), ("area", item.AreaId), ("count", ItemText.Number(item.Count)), ("value", ItemText.Value(item)),
        .. ItemText.Build(item.Written),
        .. ItemText.Harvest(item.Harvest),
        ("spot", item.Spot is { } spot ? $"{PlotText.Metres(spot.XDm)} {PlotText.Metres(spot.YDm)}" : null),
        ("endangers", item.Endangers.Count > 0 ? string.Join(' ', item.Endangers.Select(word => word.Replace(' ', '_'))) : null),
        ("jobs", Jobs(item)),
    ];

    private static string? Jobs(Item item)
    {
        if (item.JobsTypical) return null;
        return item.Jobs.Count == 0 ? "none" : string.Join(' ', item.Jobs.Select(Job));
    }

    private static string Job(Job job)
    {
        var kind = Tokens.Of(job.Kind);
        if (!job.LeftOut.HasFlag(JobParts.People)) return $"{kind}:{job.Minutes}:{job.People}";
        return job.LeftOut.HasFlag(JobParts.Minutes) ? kind : $"{kind}:{job.Minutes}";
    }

    private static IEnumerable<string> Lost(Item item)
    {
        if (item.Endangers.Any(word => word.Contains(' '))) yield return "blanks in 'endangers' become underscores";
        if (item.JobsTypical) yield break;

        foreach (var job in item.Jobs)
        {
            var parts = Parts(job).Where(part => part.Is).Select(part => part.Key).ToList();
            if (parts.Count > 0) yield return $"{string.Join(", ", parts)} of {Tokens.Of(job.Kind)}";
        }
    }

    private static IEnumerable<(string Key, bool Is)> Parts(Job job) =>
    [
        ("class", !job.LeftOut.HasFlag(JobParts.Class)),
        ("after", job.After.Count > 0),
        ("value", job.ValueStated),
        ("materials", !job.LeftOut.HasFlag(JobParts.Materials)),
        ("store", job.StoreId is not null),
        ("caution", job.Caution is not null && !job.LeftOut.HasFlag(JobParts.Caution)),
        ("fallback", job.Fallback is not null),
        ("undo", !job.LeftOut.HasFlag(JobParts.Undo)),
        ("last_round", !job.LeftOut.HasFlag(JobParts.LastRound)),
    ];
}
