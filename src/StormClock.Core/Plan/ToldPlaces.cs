using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What was told of a job, with its people by index into <see cref="Crew.Hands"/>.</summary>
internal sealed record ToldPlace(Instant Start, int[] Team);

/// <summary>
/// Where jobs stood in the plan last told, and which of them keep their place: what somebody has started, and what was to begin about
/// now, as long as no class of work must stop sooner than was told (science.md 8.4).
/// </summary>
internal static class ToldPlaces
{
    /// <summary>On either side of now.</summary>
    private static readonly Duration AboutNow = Duration.FromHours(2);

    private static readonly Duration StopMoved = Duration.FromHours(1);

    public static IReadOnlyDictionary<string, ToldPlace> Of(PlanRequest request, Crew crew)
    {
        var places = new Dictionary<string, ToldPlace>();
        foreach (var told in request.Before?.Jobs ?? []) places[told.JobId] = new(told.Start, Indices(told.People, crew));
        foreach (var state in request.States.Values.Where(state => state.Progress == JobProgress.Started))
        {
            places.TryAdd(state.JobId, new(state.At, Indices([state.By], crew)));
        }

        return places;
    }

    /// <summary>Ids of the jobs at the head of the order, none of which waits for a job that is not there.</summary>
    public static IReadOnlyList<string> Kept(PlanRequest request, IReadOnlyList<Job> jobs)
    {
        var open = jobs.Select(job => job.Id).ToHashSet();
        var told = (LimitMoved(request) ? [] : request.Before?.Jobs ?? []).ToLookup(place => place.JobId);
        var wanted = jobs.Where(job => request.Is(job, JobProgress.Started)).OrderBy(job => request.States[job.Id].At)
            .Concat(jobs
                .Where(job => !request.IsPutOff(job) && told[job.Id].Any(place => IsAboutNow(request, place.Start)))
                .OrderBy(job => told[job.Id].First().Start))
            .DistinctBy(job => job.Id);
        var kept = new List<string>();
        foreach (var job in wanted)
        {
            if (job.After.All(before => !open.Contains(before) || kept.Contains(before))) kept.Add(job.Id);
        }

        return kept;
    }

    private static bool IsAboutNow(PlanRequest request, Instant start) => start >= request.Now - AboutNow && start < request.Now + AboutNow;

    private static bool LimitMoved(PlanRequest request) =>
        request.Before is { } before && GardenStops.Of(request).Any(stop => GardenStops.Sooner(stop.Value, before.Stops, stop.Key) >= StopMoved);

    private static int[] Indices(IEnumerable<string> people, Crew crew) =>
        [.. people.Select(id => crew.Hands.ToList().FindIndex(person => person.Id == id)).Where(i => i >= 0).Order()];
}
