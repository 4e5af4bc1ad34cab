using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>How long a job still takes.</summary>
internal static class Remaining
{
    /// <summary>Of a job that was started a long time ago so much is still counted (C): somebody would have said that it is done.</summary>
    private const double LeastShare = 0.25;

    /// <summary>All its minutes, or what is left of them since it was started.</summary>
    public static int Minutes(PlanRequest request, Job job)
    {
        var minutes = Math.Max(1, job.Minutes);
        if (!request.Is(job, JobProgress.Started)) return minutes;
        var gone = Math.Max(0, (request.Now - request.States[job.Id].At).TotalMinutes);
        return (int)Math.Ceiling(Math.Max(minutes * LeastShare, minutes - gone));
    }
}
