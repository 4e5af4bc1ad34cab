using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Plan;

/// <summary>
/// Plans the open jobs into the windows of light and of people's own hours, before the hour at which their class of work stops, so
/// that the most is saved over the members of the forecast; and says what does not fit, and why. The same request gives the
/// same plan.
/// </summary>
public static class Planner
{
    /// <summary>How often the last round may be widened by one work day more.</summary>
    private const int Widenings = 2;

    public static GardenPlan Plan(PlanRequest request)
    {
        var all = request.Book.Jobs.Where(request.IsOpen).Select(job => Answered.AsPlanned(request, job)).DistinctBy(job => job.Id).ToList();
        var open = all.Where(job => !request.BetterLeft.ContainsKey(job.Id)).ToList();
        var problem = PlanProblem.Of(request, open);
        var line = Search(problem);
        var planned = Planned(request, problem, line);
        IReadOnlyList<LeftOutJob> leftOut = [.. LeftOut.Of(request, open, problem, line), .. Answered.LeftOut(request)];
        return new(request.Now, GardenStops.Of(request), planned, leftOut, Supplies.Short(request, planned), Supplies.Stores(request, planned, leftOut))
        {
            BetterLeft = [.. all.Where(job => request.BetterLeft.ContainsKey(job.Id)).Select(job => new LeftOutJob(job, request.BetterLeft[job.Id], null))],
            Changes = PlanChanges.Of(request, planned, leftOut),
        };
    }

    private static Line Search(PlanProblem problem)
    {
        var line = OrderSearch.Best(problem.Model);
        for (var i = 0; i < Widenings && LastRound.Widen(problem.Model, problem.Jobs, line); i++)
        {
            var wider = OrderSearch.Best(problem.Model, OrderSearch.Changes(problem.Jobs.Count) / 4, [line.Order]);
            if (wider.Score > line.Score) line = wider;
        }

        return line;
    }

    private static List<PlannedJob> Planned(PlanRequest request, PlanProblem problem, Line line)
    {
        var latest = LatestStarts.Of(problem.Model, line);
        var chances = ChanceDone.Of(problem.Model, line);
        return [.. Enumerable.Range(0, problem.Jobs.Count)
            .Where(index => line.Start[index] >= 0)
            .Select(index =>
            {
                var job = problem.Jobs[index];
                var start = problem.Grid.At(line.Start[index]);
                var startBy = Instant.Max(start, Moments.QuarterBefore(problem.Grid.At(latest[index])));
                return new PlannedJob(
                    job, problem.PeopleOf(line.Team[index]), start, problem.Grid.EndOf(line.Start[index], Remaining.Minutes(request, job)), startBy, chances[index]);
            })
            .OrderBy(job => job.Start)
            .ThenBy(job => job.Job.Id, StringComparer.Ordinal)];
    }
}
