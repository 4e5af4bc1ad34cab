using System.Text;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Items and their jobs.</summary>
public static partial class GardenWriter
{
    private static void Items(StringBuilder text, GardenBook book)
    {
        if (book.Items.Count == 0)
        {
            text.Append("items: []\n");
            return;
        }

        text.Append("items:\n");
        foreach (var item in book.Items)
        {
            text.Append("  - id: ").Append(Text(item.Id)).Append('\n');
            Line(text, 4, "name", Text(item.Name));
            Line(text, 4, "kind", item.Kind);
            Line(text, 4, "area", Text(item.AreaId));
            Line(text, 4, "count", Number(item.Count));
            Line(text, 4, "value", ItemText.Value(item));
            foreach (var (key, value) in ItemText.Build(item.Written)) Line(text, 4, key, value);
            foreach (var (key, value) in ItemText.Harvest(item.Harvest)) Line(text, 4, key, value);
            Line(text, 4, "endangers", List(item.Endangers.Select(Text)));
            Jobs(text, item);
        }
    }

    /// <summary>Without the key the kind's jobs come back; <c>none</c> keeps them away.</summary>
    private static void Jobs(StringBuilder text, Item item)
    {
        if (item.JobsTypical) return;
        if (item.Jobs.Count == 0)
        {
            Line(text, 4, "jobs", "none");
            return;
        }

        text.Append("    jobs:\n");
        foreach (var job in item.Jobs) text.Append("      - ").Append(Job(job)).Append('\n');
    }

    private static string Job(Job job) => Flow([.. AllOf(job).Where(entry => !LeftOut(job, entry.Key))]);

    private static bool LeftOut(Job job, string key) => JobKeys.All.Any(part => part.Key == key && job.LeftOut.HasFlag(part.Part));

    private static (string Key, string? Value)[] AllOf(Job job) =>
    [
        ("kind", Tokens.Of(job.Kind)),
        ("minutes", Number(job.Minutes)),
        ("people", Number(job.People)),
        ("class", Tokens.Of(job.Class)),
        ("after", List(job.After.Select(Text))),
        ("value", job.ValueStated ? Number(job.Value) : null),
        ("materials", $"[{string.Join(", ", job.Materials.Select(need => Material(need.Material, need.Quantity, need.Unit)))}]"),
        ("store", job.StoreId is null ? null : Flow(("id", Text(job.StoreId)), ("floor_m2", Number(job.StoreFloorM2)), ("volume_m3", Number(job.StoreVolumeM3)))),
        ("caution", Text(job.Caution)),
        ("fallback", Text(job.Fallback)),
        ("undo", job.Undo is { } undo ? Tokens.Of(undo) : "none"),
        ("last_round", Flag(job.LastRound)),
    ];
}
