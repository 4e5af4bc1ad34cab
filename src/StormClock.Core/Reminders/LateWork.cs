using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>A planned job that should have been started by the hour that was told, and that nobody has begun or ended.</summary>
/// <param name="Overdue">How long ago that was, less a little grace.</param>
public sealed record LateJob(PlannedJob Job, Duration Overdue);

/// <summary>Which work is late.</summary>
internal static class LateWork
{
    // At night, or while the newest plan has it for another day, there is nothing to be said.
    private static readonly Duration AboutNow = Duration.FromMinutes(30);

    // Nobody puts down the string to press a button.
    private static readonly Duration Grace = Duration.FromMinutes(15);

    /// <summary>After "later", or a "cannot" that leaves the job in the plan, it is not asked for again so soon (C), whatever the plan's next last start.</summary>
    private static readonly Duration PutOff = Duration.FromHours(2);

    private static bool IsAnswered(Situation now, string jobId) =>
        now.States.TryGetValue(jobId, out var state) && (state.Progress == JobProgress.Started || (state.Progress != JobProgress.Open && now.Now - state.At < PutOff));

    public static IReadOnlyList<LateJob> Of(Situation now) =>
    [
        .. from job in now.Plan?.Jobs ?? []
           where now.Announced.StartBys.ContainsKey(job.Job.Id) && !IsAnswered(now, job.Job.Id)
           let due = now.Announced.StartBys[job.Job.Id] + Grace
           where due <= now.Now && job.Start <= now.Now + AboutNow
           select new LateJob(job, now.Now - due),
    ];
}
