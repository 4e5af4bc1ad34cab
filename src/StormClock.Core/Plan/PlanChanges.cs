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
        var left = leftOut.Select(job => job.Job.Id).ToHashSet();
        var told = before.Jobs.Select(job => job.JobId).ToHashSet();
        var jobs = request.Book.Jobs.DistinctBy(job => job.Id).ToDictionary(job => job.Id);
        return
        [
            .. before.Jobs.SelectMany(job => Change(request, before, job, now, left, jobs)),
            .. planned.Where(job => !told.Contains(job.Job.Id)).Select(job => new PlanChange(job.Job.Id, PlanChangeKind.New, PlanChangeCause.NotTold)),
        ];
    }

    private static IEnumerable<PlanChange> Change(
        PlanRequest request,
        ToldPlan before,
        ToldJob told,
        Dictionary<string, PlannedJob> now,
        HashSet<string> left,
        Dictionary<string, Job> jobs)
    {
        if (!jobs.TryGetValue(told.JobId, out var job)) yield return new(told.JobId, PlanChangeKind.Dropped, PlanChangeCause.NotInBook);
        else if (request.Is(job, JobProgress.Done)) yield return new(job.Id, PlanChangeKind.Done, PlanChangeCause.Done);
        else if (!request.IsOpen(job)) yield return new(job.Id, PlanChangeKind.Dropped, PlanChangeCause.SaidCannot);
        else if (left.Contains(job.Id)) yield return new(job.Id, PlanChangeKind.Dropped, PlanChangeCause.LeftOut);
        else if (request.BetterLeft.ContainsKey(job.Id)) yield return new(job.Id, PlanChangeKind.Dropped, PlanChangeCause.BetterLeft);
        else if (now.TryGetValue(job.Id, out var planned))
        {
            if (Moved(told.Start, planned.Start) is { } kind) yield return new(job.Id, kind, Cause(request, before, job, told, planned));
            else if (!planned.People.ToHashSet().SetEquals(told.People)) yield return new(job.Id, PlanChangeKind.OtherPeople, PlanChangeCause.OtherPeople);
        }
    }

    private static PlanChangeKind? Moved(Instant told, Instant now)
    {
        if (told - now > WorthNaming) return PlanChangeKind.Earlier;
        return now - told > WorthNaming ? PlanChangeKind.Later : null;
    }

    private static PlanChangeCause Cause(PlanRequest request, ToldPlan before, Job job, ToldJob told, PlannedJob planned)
    {
        var stop = GardenStops.Of(request)[job.Class];
        if (GardenStops.Sooner(stop, before.Stops, job.Class) >= WorthNaming) return PlanChangeCause.StopsSooner;
        if (told.Start < request.Now) return PlanChangeCause.NotBegun;
        return planned.People.ToHashSet().SetEquals(told.People) ? PlanChangeCause.OtherOrder : PlanChangeCause.OtherPeople;
    }
}
