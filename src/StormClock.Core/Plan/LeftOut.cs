using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Names what does not fit with the reason: what endangers others first, then the most worth by the minute (science.md 8.5).</summary>
internal static class LeftOut
{
    public static IReadOnlyList<LeftOutJob> Of(PlanRequest request, IReadOnlyList<Job> open, PlanProblem problem, Line line)
    {
        var gaps = new Gaps(problem.Model, line);
        return [.. open
            .OrderByDescending(job => job.HazardToOthers > 0)
            .ThenByDescending(WorthByMinute)
            .ThenBy(job => job.Id, StringComparer.Ordinal)
            .Select(job => (Job: job, Why: Why(request, problem, line, gaps, job)))
            .Where(left => left.Why is not null)
            // Once its class of work has stopped, or only darkness is left, the cheap thing in its place would be the same work.
            .Select(left => new LeftOutJob(left.Job, left.Why!, left.Why is { Cause: LeftCause.Stopped } or { NeverOpen: true } ? null : left.Job.Fallback))];
    }

    public static double WorthByMinute(Job job) => ModelJobs.Worth(job) / (Math.Max(1, job.Minutes) * Math.Max(1, job.People));

    /// <summary>Null when it is planned.</summary>
    private static LeftReason? Why(PlanRequest request, PlanProblem problem, Line line, Gaps gaps, Job job)
    {
        if (problem.Hopeless.TryGetValue(job.Id, out var reason)) return reason;
        var index = problem.IndexOf(job);
        if (line.Start[index] >= 0) return null;
        var inModel = problem.Model.Jobs[index];
        if (inModel.Before.Any(before => line.Start[before] < 0)) return LeftCause.FollowsLeftOut;
        if (inModel.Store >= 0 && !line.HasRoom(inModel)) return LeftCause.StoreFull;
        return Time(request.Book.ItemOf(job), job, index, gaps);
    }

    /// <summary>Things that are worked on one by one are worth naming in part: "there is time for 4 of 9".</summary>
    private static LeftReason Time(Item item, Job job, int index, Gaps gaps)
    {
        for (var pieces = item.Count - 1; pieces > 0; pieces--)
        {
            if (gaps.Take(index, PlanGrid.Length((double)job.Minutes * pieces / item.Count))) return new(LeftCause.NoTimeForAll) { Pieces = pieces, AllPieces = item.Count };
        }

        return LeftCause.NoTime;
    }
}
