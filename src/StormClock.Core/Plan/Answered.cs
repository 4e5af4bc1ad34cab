using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What the plan makes of jobs that somebody said cannot be done.</summary>
internal static class Answered
{
    /// <summary>Worth that a job keeps for which somebody has no time (C): behind like work, before work that is worth next to nothing.</summary>
    public const double WorthWithoutTime = 0.25;

    /// <summary>A job that needs a person more is planned for one more.</summary>
    public static Job AsPlanned(PlanRequest request, Job job) =>
        request.WhyNot(job) == CannotWhy.NeedsPerson ? job with { People = job.People + 1 } : job;

    /// <summary>Jobs that stay out because of what was said, each with that as its reason.</summary>
    public static IReadOnlyList<LeftOutJob> LeftOut(PlanRequest request) =>
        [.. request.Book.Jobs.DistinctBy(job => job.Id).Where(job => request.Is(job, JobProgress.Cannot) && !request.IsOpen(job))
            .Select(job => new LeftOutJob(job, Why(request.States[job.Id]), job.Fallback) { Answered = true })];

    /// <summary>Materials of which somebody said that they are not there.</summary>
    public static IReadOnlyList<MaterialNeed> Missing(PlanRequest request) =>
        [.. request.Book.Jobs.DistinctBy(job => job.Id).Where(job => request.WhyNot(job) == CannotWhy.NoMaterial).SelectMany(job => job.Materials)];

    private static LeftReason Why(JobState state) => new(state.Why == CannotWhy.NoMaterial ? LeftCause.SaidNoMaterial : LeftCause.SaidCannot) { By = state.By };
}
