using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Water;

namespace StormClock.Core.Stages;

/// <summary>What is done when only rain is to come: drains, and what must stand above the water. It ends when the rain begins.</summary>
internal static class RainWork
{
    public static GardenBook Of(GardenBook book) =>
        book with { Items = [.. book.Items.Select(item => item with { Jobs = [.. item.Jobs.Where(job => job.Kind is JobKind.Drain or JobKind.Raise)] })] };

    public static IReadOnlyDictionary<(string SiteId, WorkClass Class), StopTimes> Stops(GardenBook book, RainOutlook rain) =>
        rain.From is not { } from
            ? new Dictionary<(string, WorkClass), StopTimes>()
            : book.Sites.SelectMany(site => Enum.GetValues<WorkClass>().Select(work => (site.Id, work))).ToDictionary(key => key, _ => new StopTimes(from));
}
