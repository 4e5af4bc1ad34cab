using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Items and their jobs.</summary>
public static partial class GardenWriter
{
    internal static WrittenMap Of(Item item) => new(
        item.Id,
        [
            .. Fields(
            [
                ("id", Text(item.Id)), ("name", Text(item.Name)), ("kind", item.Kind), ("area", Text(item.AreaId)), ("count", Number(item.Count)), ("value", ItemText.Value(item)),
                .. ItemText.Build(item.Written),
                .. ItemText.Harvest(item.Harvest),
                ("spot", PlotText.Of(item.Spot)),
                ("endangers", List(item.Endangers.Select(Text))),
            ]),
            .. Jobs(item),
        ],
        Flow: false);

    /// <summary>Without the key the kind's jobs come back; <c>none</c> keeps them away.</summary>
    private static IEnumerable<WrittenField> Jobs(Item item)
    {
        if (item.JobsTypical) return [];
        return [new("jobs", item.Jobs.Count == 0 ? new WrittenText("none") : new WrittenList([.. item.Jobs.Select(Of)]))];
    }

    private static WrittenMap Of(Job job) => Entry(job.Id, [.. AllOf(job).Where(entry => !LeftOut(job, entry.Key))]);

    private static bool LeftOut(Job job, string key) => JobKeys.All.Any(part => part.Key == key && job.LeftOut.HasFlag(part.Part));

    private static (string Key, string? Value)[] AllOf(Job job) =>
    [
        ("kind", Tokens.Of(job.Kind)),
        ("minutes", Number(job.Minutes)),
        ("people", Number(job.People)),
        ("class", Tokens.Of(job.Class)),
        ("after", List(job.After.Select(Text))),
        ("value", job.ValueStated ? Number(job.Value) : null),
        ("materials", $"[{string.Join(", ", job.Materials.Select(need => OneLine(Material(need.Material, need.Quantity, need.Unit))))}]"),
        ("part_kg", Number(job.PartKg)),
        ("store", job.StoreId is null ? null : OneLine(("id", Text(job.StoreId)), ("floor_m2", Number(job.StoreFloorM2)), ("volume_m3", Number(job.StoreVolumeM3)))),
        ("caution", Text(job.Caution)),
        ("fallback", Text(job.Fallback)),
        ("undo", job.Undo is { } undo ? Tokens.Of(undo) : "none"),
        ("last_round", Flag(job.LastRound)),
    ];
}
