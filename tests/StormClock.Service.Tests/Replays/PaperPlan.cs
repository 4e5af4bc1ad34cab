using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Service.Tests.Replays;

/// <summary>
/// What a careful person plans on paper: the jobs in one plain order, each at the first time that is free, with the same hours, stops,
/// walks and stores as the planner has.
/// </summary>
internal static class PaperPlan
{
    public static ReplayPlan Of(PlanRequest request, int order)
    {
        var open = request.Book.Jobs.Where(job => request.IsOpen(job) && !request.BetterLeft.ContainsKey(job.Id)).ToList();
        var problem = PlanProblem.Of(request, open);
        var line = Decoded(problem.Model, order);
        if (LastRound.Widen(problem.Model, problem.Jobs, line) && Decoded(problem.Model, order) is var wider && wider.Score > line.Score) line = wider;
        var jobs = Enumerable.Range(0, problem.Jobs.Count).Where(i => line.Start[i] >= 0).Select(i => Timed(request, problem, line, i));
        return new([.. jobs], GardenStops.Of(request).ToDictionary(stop => stop.Key, stop => stop.Value.Earliest));
    }

    private static Line Decoded(PlanModel model, int order) => OrderSearch.Decoded(model, FirstOrders.Of(model).ElementAt(order));

    private static ReplayJob Timed(PlanRequest request, PlanProblem problem, Line line, int index)
    {
        var (job, start) = (problem.Jobs[index], problem.Grid.At(line.Start[index]));
        var end = start + Duration.FromMinutes(Remaining.Minutes(request, job));
        return new(job.Id, problem.PeopleOf(line.Team[index])[0], start, end, end);
    }
}

/// <summary>One job with its time in a plan, whoever made it.</summary>
/// <param name="LatestEnd">Its end when it is begun only at its last start.</param>
internal sealed record ReplayJob(string Id, string By, Instant Start, Instant End, Instant LatestEnd);

/// <param name="Stops">When each class of work stops; nothing is worked on beyond it.</param>
internal sealed record ReplayPlan(IReadOnlyList<ReplayJob> Jobs, IReadOnlyDictionary<WorkClass, Instant?> Stops)
{
    public static ReplayPlan None { get; } = new([], new Dictionary<WorkClass, Instant?>());

    public static ReplayPlan Of(GardenPlan? plan) => plan is null
        ? None
        : new([.. plan.Jobs.Select(job => new ReplayJob(job.Job.Id, job.People[0], job.Start, job.End, job.StartBy + (job.End - job.Start)))], plan.WorkStops.ToDictionary(stop => stop.Key, stop => stop.Value.Earliest));
}
