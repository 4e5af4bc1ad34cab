using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>
/// Which work is late: planned, to be started by an hour that was told, and nobody has begun, ended or answered it; not while people who began it when
/// they were told may still be at it.
/// </summary>
internal static class LateWork
{
    // At night, or while the newest plan has it for another day, there is nothing to be said.
    private static readonly Duration AboutNow = Duration.FromMinutes(30);

    // Nobody puts down the string to press a button.
    private static readonly Duration Grace = Duration.FromMinutes(15);

    /// <summary>After "later", or a "cannot" that leaves the job in the plan, it is not asked for again so soon (C), whatever the plan's next last start.</summary>
    private static readonly Duration PutOff = Duration.FromHours(2);

    public static IReadOnlyList<PlannedJob> Of(Situation now) =>
    [
        .. from job in now.Plan?.Jobs ?? []
           where now.Announced.StartBys.ContainsKey(job.Job.Id) && !IsAnswered(now, job.Job.Id)
           where Instant.Max(now.Announced.StartBys[job.Job.Id], ToldEnd(now, job)) + Grace <= now.Now && job.Start <= now.Now + AboutNow
           select job,
    ];

    /// <summary>When it would be done, had it been begun at the hour told.</summary>
    private static Instant ToldEnd(Situation now, PlannedJob job) =>
        now.Announced.Jobs.FirstOrDefault(told => told.JobId == job.Job.Id) is { } told ? told.Start + Duration.FromMinutes(job.Job.Minutes) : Instant.MinValue;

    /// <summary>
    /// Since when each planned job has been late without an answer. A new plan that tells a later hour does not begin it anew: it was not
    /// answered for all that.
    /// </summary>
    /// <param name="known">As found before.</param>
    public static IReadOnlyDictionary<string, Instant> Since(Situation now, IReadOnlyDictionary<string, Instant> known)
    {
        var planned = (now.Plan?.Jobs ?? []).Select(job => job.Job.Id).ToHashSet();
        var since = known.Where(late => planned.Contains(late.Key) && !(now.States.GetValueOrDefault(late.Key)?.At >= late.Value)).ToDictionary();
        foreach (var job in Of(now)) since.TryAdd(job.Job.Id, now.Now);
        return since;
    }

    private static bool IsAnswered(Situation now, string jobId) =>
        now.States.TryGetValue(jobId, out var state) && (state.Progress == JobProgress.Started || (state.Progress != JobProgress.Open && now.Now - state.At < PutOff));
}
