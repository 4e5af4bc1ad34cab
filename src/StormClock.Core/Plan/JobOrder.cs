using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>
/// The order in which jobs are given time: the class that stops first comes first, then site by site and area by area as the
/// book has them, the most worth by the minute first; every job behind those it must follow, and the last round last.
/// </summary>
internal static class JobOrder
{
    public static IReadOnlyList<Job> Of(PlanRequest request, IReadOnlyCollection<Job> jobs)
    {
        var wanted = jobs
            .OrderBy(job => job.LastRound)
            .ThenBy(job => Later(request, job))
            .ThenBy(request.StopOf)
            .ThenBy(job => AreaIndex(request.Book, job))
            .ThenByDescending(WorthByMinute)
            .ThenBy(job => job.Id, StringComparer.Ordinal)
            .ToList();
        return BehindTheirForerunners(wanted);
    }

    /// <summary>Worth of one minute of one person.</summary>
    public static double WorthByMinute(Job job) => (job.Value + job.HazardToOthers) / (Math.Max(1, job.Minutes) * Math.Max(1, job.People));

    private static int AreaIndex(GardenBook book, Job job)
    {
        var area = book.AreaOf(book.ItemOf(job));
        var sites = book.Sites.Select(site => site.Id).ToList();
        return (sites.IndexOf(area.SiteId) * book.Areas.Count) + book.Areas.ToList().IndexOf(area);
    }

    private static bool Later(PlanRequest request, Job job) =>
        request.States.TryGetValue(job.Id, out var state) && state.Progress == JobProgress.Later;

    private static List<Job> BehindTheirForerunners(List<Job> wanted)
    {
        var open = wanted.ToDictionary(job => job.Id);
        var placed = new HashSet<string>();
        var order = new List<Job>();

        void Place(Job job)
        {
            if (!placed.Add(job.Id)) return;
            foreach (var before in job.After)
            {
                if (open.TryGetValue(before, out var forerunner)) Place(forerunner);
            }

            order.Add(job);
        }

        foreach (var job in wanted) Place(job);
        return order;
    }
}
