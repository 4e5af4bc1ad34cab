using StormClock.Core.Garden;
using StormClock.Core.Worth;

namespace StormClock.Service.Books;

/// <summary>Jobs that come with a kind.</summary>
public sealed partial class GardenReader
{
    private const int MostMinutes = 1440;

    private ItemTraits TraitsOf(Item item) => kinds.GetValueOrDefault(item.Kind)?.Traits ?? default;

    /// <summary>The kind's own job of a sort; null when it has none.</summary>
    private KindJob? KindJobOf(Item item, JobKind kind) => kinds.GetValueOrDefault(item.Kind)?.Jobs.FirstOrDefault(job => job.Kind == kind);

    private List<Job> UsualJobs(YamlFields fields, Item item)
    {
        var jobs = new List<Job>();
        foreach (var usual in UsualFor(item))
        {
            jobs.Add(UsualJob(usual, item, JobId(item.Id, usual.Kind, jobs), jobs));
            jobFields.TryAdd(jobs[^1].Id, fields);
        }

        return jobs;
    }

    /// <summary>What has rooted through its pot is tied where it stands: moving it would tear its roots (common practice).</summary>
    private static readonly KindJob TieRooted = new(
        Core.Garden.JobKind.Tie, 10, 8, 1, null, [new("stake", 2, "each"), new("webbing", 4, "m")], [],
        "It has rooted through its pot: do not move or tip it, the roots would tear.", "leave it as it stands");

    private IEnumerable<KindJob> UsualFor(Item item)
    {
        var usual = kinds.GetValueOrDefault(item.Kind)?.Jobs ?? [];
        return item.Build.Standing == Standing.RootedThrough && usual.Any(job => BookDoubts.TearsRoots(job.Kind))
            ? usual.Where(job => !BookDoubts.TearsRoots(job.Kind) && job.Kind != Core.Garden.JobKind.Tie).Append(TieRooted)
            : usual;
    }

    private Job UsualJob(KindJob usual, Item item, string id, List<Job> before) => new(
        id,
        item.Id,
        usual.Kind,
        MinutesOf(usual, item),
        usual.People,
        usual.Class ?? JobDefaults.ClassOf(usual.Kind, TraitsOf(item)),
        [.. before.Where(job => usual.After.Contains(job.Kind)).Select(job => job.Id)],
        item.ValueUsd,
        ItemWorth.HazardUsd(item),
        MaterialsOf(usual, item),
        null,
        0,
        0,
        usual.Fallback,
        JobDefaults.UndoOf(usual.Kind),
        JobDefaults.LastRoundOf(usual.Kind, TraitsOf(item)))
    {
        Caution = usual.Caution,
        PartKg = usual.PartKg,
        Typical = true,
    };

    private static int MinutesOf(KindJob usual, Item item) => Math.Min(MostMinutes, usual.Minutes(item.Count));

    private static List<MaterialNeed> MaterialsOf(KindJob? usual, Item item) =>
        [.. (usual?.Materials ?? []).Select(need => need with { Quantity = need.Quantity * item.Count })];
}
