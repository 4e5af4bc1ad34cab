using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>
/// Work that is kept for the last hours: glass, loose things, lids, animals, soaking. It waits for the last work day before its
/// stop, or for the last twelve hours, whichever is sooner.
/// </summary>
internal static class LastRound
{
    /// <summary>Convention; science.md 4.3.</summary>
    private const int LeadSlots = 12 * 60 / PlanGrid.SlotMinutes;

    public static void Set(PlanModel model, IReadOnlyList<Job> jobs)
    {
        for (var i = 0; i < jobs.Count; i++)
        {
            if (!jobs[i].LastRound) continue;
            var job = model.Jobs[i];
            var lastWindow = Windows(model, job).Max(window => window.From);
            job.NotBefore = Math.Max(0, Math.Min(lastWindow, model.Stop[job.Lane] - LeadSlots));
        }
    }

    /// <summary>
    /// Gives the last round that found no room in its hours the last hours of the work day before; false when nothing could be given.
    /// </summary>
    public static bool Widen(PlanModel model, IReadOnlyList<Job> jobs, Line line)
    {
        var late = Enumerable.Range(0, jobs.Count).Where(i => jobs[i].LastRound && line.Start[i] < 0).Select(i => model.Jobs[i]).ToList();
        var need = late.Sum(job => job.Length + model.SetUp);
        var widened = false;
        foreach (var job in late)
        {
            var earlier = Windows(model, job).Where(window => window.From < job.NotBefore).ToList();
            if (earlier.Count == 0) continue;
            var before = earlier.MaxBy(window => window.From);
            job.NotBefore = Math.Max(before.From, Math.Min(before.Until, job.NotBefore) - need);
            widened = true;
        }

        return widened;
    }

    private static IEnumerable<(int From, int Until)> Windows(PlanModel model, ModelJob job) =>
        job.Teams.SelectMany(team => model.Windows[team][job.Lane]!.Windows).Where(window => window.Until - window.From >= job.Length);
}
