using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>When each class of work stops at the first of a garden's sites.</summary>
internal static class GardenStops
{
    public static IReadOnlyDictionary<WorkClass, WorkStop> Of(PlanRequest request) =>
        Enum.GetValues<WorkClass>().ToDictionary(
            workClass => workClass,
            workClass =>
            {
                var stops = request.Stops.Where(entry => entry.Key.Class == workClass).Select(entry => entry.Value).ToList();
                return new WorkStop(stops.Min(stop => stop.Earliest), stops.Min(stop => stop.Likely));
            });

    /// <summary>How much sooner a class stops than was told; zero when it does not, no end of it when no stop was told.</summary>
    public static Duration Sooner(WorkStop stop, IReadOnlyDictionary<WorkClass, Instant> told, WorkClass workClass)
    {
        if (stop.Earliest is not { } now) return Duration.Zero;
        return told.TryGetValue(workClass, out var before) ? Duration.Max(Duration.Zero, before - now) : Duration.MaxValue;
    }
}
