using StormClock.Core.Reminders;

namespace StormClock.Service.Messages;

/// <summary>
/// Which work may be told to people. The plan keeps its jobs before leave-by and the stop; should one
/// slip through, it is not passed on to a person, nor a last start that would end after them (product.md 7.1, 7.2).
/// </summary>
internal static class ToldWork
{
    /// <summary>The earlier of leave-by and the stop; after the storm neither is given.</summary>
    public static Instant? Limit(Instant? leaveBy, Instant? stop) => (leaveBy, stop) switch
    {
        ({ } leave, { } wind) => Instant.Min(leave, wind),
        _ => leaveBy ?? stop,
    };

    /// <summary>The jobs that may be told.</summary>
    public static IReadOnlyList<BriefJob> Keep(IReadOnlyList<BriefJob> jobs, Instant? limit) =>
        limit is { } by ? [.. jobs.Where(job => !(Ends(job) > by)).Select(job => StartsInTime(job, by))] : jobs;

    private static Instant? Ends(BriefJob job) => job.Start + Duration.FromMinutes(job.Minutes);

    private static BriefJob StartsInTime(BriefJob job, Instant limit)
    {
        var latest = limit - Duration.FromMinutes(job.Minutes);
        return job.StartBy > latest ? job with { StartBy = latest } : job;
    }
}
