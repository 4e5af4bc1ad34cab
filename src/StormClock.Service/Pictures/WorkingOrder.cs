using StormClock.Core.Plan;

namespace StormClock.Service.Pictures;

/// <summary>The number by which a job is known both in the picture and on the sheet beside it.</summary>
internal static class WorkingOrder
{
    /// <summary>By start, counted from 1.</summary>
    public static IReadOnlyList<(int Number, PlannedJob Job)> InWorkingOrder(this GardenPlan plan) =>
        [.. plan.Jobs.OrderBy(job => job.Start).Select((job, at) => (at + 1, job))];
}
