using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Holds a plan against the one last told: what moved by more than an hour, changed hands, came or went, and why.</summary>
internal static class PlanChanges
{
    private static readonly Duration WorthNaming = Duration.FromHours(1);

    public static IReadOnlyList<PlanChange> Of(PlanRequest request, IReadOnlyList<PlannedJob> planned, IReadOnlyList<LeftOutJob> leftOut)
    {
        if (request.Before is not { } before) return [];
        var now = planned.ToDictionary(job => job.Job.Id);
        var left = leftOut.ToDictionary(job => job.Job.Id);
        var told = before.Jobs.Select(job => job.JobId).ToHashSet();
        var jobs = request.Book.Jobs.DistinctBy(job => job.Id).ToDictionary(job => job.Id);
        return
        [
            .. before.Jobs.SelectMany(job => Change(request, before, job, now, left, jobs)),
            .. planned.Where(job => !told.Contains(job.Job.Id)).Select(job => new PlanChange(job.Job.Id, PlanChangeKind.New, "it was not in the plan last told")),
        ];
    }

    private static IEnumerable<PlanChange> Change(
        PlanRequest request,
        ToldPlan before,
        ToldJob told,
        Dictionary<string, PlannedJob> now,
        Dictionary<string, LeftOutJob> left,
        Dictionary<string, Job> jobs)
    {
        if (!jobs.TryGetValue(told.JobId, out var job)) yield return new(told.JobId, PlanChangeKind.Dropped, "it is no longer in the book");
        else if (request.Is(job, JobProgress.Done)) yield return new(job.Id, PlanChangeKind.Done, "it is done");
        else if (!request.IsOpen(job)) yield return new(job.Id, PlanChangeKind.Dropped, "somebody said that it cannot be done");
        else if (left.TryGetValue(job.Id, out var out1)) yield return new(job.Id, PlanChangeKind.Dropped, out1.Why);
        else if (request.BetterLeft.TryGetValue(job.Id, out var why)) yield return new(job.Id, PlanChangeKind.Dropped, why);
        else if (now.TryGetValue(job.Id, out var planned))
        {
            if (Moved(told.Start, planned.Start) is { } kind) yield return new(job.Id, kind, Cause(request, before, job, told, planned));
            else if (!planned.People.ToHashSet().SetEquals(told.People)) yield return new(job.Id, PlanChangeKind.OtherPeople, "other people do it");
        }
    }

    private static PlanChangeKind? Moved(Instant told, Instant now)
    {
        if (told - now > WorthNaming) return PlanChangeKind.Earlier;
        return now - told > WorthNaming ? PlanChangeKind.Later : null;
    }

    private static string Cause(PlanRequest request, ToldPlan before, Job job, ToldJob told, PlannedJob planned)
    {
        var stop = GardenStops.Of(request)[job.Class];
        if (GardenStops.Sooner(stop, before.Stops, job.Class) >= WorthNaming) return "this work must stop sooner than last told";
        if (told.Start < request.Now) return "it was not begun when it was due";
        return planned.People.ToHashSet().SetEquals(told.People) ? "the order of the work changed" : "other people do it";
    }
}
