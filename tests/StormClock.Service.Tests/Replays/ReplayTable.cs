using System.Globalization;

namespace StormClock.Service.Tests.Replays;

/// <summary>All jobs of one garden at one place in one storm.</summary>
internal sealed record ReplayedGarden(string Storm, string Place, string Garden, IReadOnlyList<ReplayedJob> Jobs, IReadOnlyList<ToldStop> Stops);

/// <summary>Shares over some replays. Jobs whose limit never came are left out.</summary>
internal sealed class ReplayTally
{
    private readonly int places;
    private readonly List<ReplayedJob> jobs;
    private readonly List<ReplayedJob> planned;
    private readonly List<ReplayedJob> worked;
    private readonly List<ReplayedJob> heedless;
    private readonly List<ToldStop> stops;

    public ReplayTally(IReadOnlyList<ReplayedGarden> gardens)
    {
        places = gardens.Select(garden => (garden.Storm, garden.Place)).Distinct().Count();
        jobs = [.. gardens.SelectMany(garden => garden.Jobs).Where(job => job.Limit is not null)];
        planned = [.. jobs.Where(job => job.Planned.Count > 0)];
        worked = [.. jobs.Where(job => job.Work.Ended is not null)];
        heedless = [.. jobs.Where(job => job.OnPaper[Replay.Heedless].Ended is not null)];
        stops = [.. gardens.SelectMany(garden => garden.Stops).Where(stop => stop.Limit is not null)];
    }

    /// <summary>Of the jobs ever planned: work on it ended after its limit, or was to end so by the last plan that had it.</summary>
    public double LastEndLate => Share(planned, IsLate);

    /// <summary>Of the jobs begun: somebody worked on it beyond its limit.</summary>
    public double WorkedLate => Share(worked, job => job.Work.Ended > job.Limit);

    /// <summary>The same of those who plan without stops and go on when the garden is closed.</summary>
    public double HeedlessLate => Share(heedless, job => job.OnPaper[Replay.Heedless].Ended > job.Limit);

    public double Saved => SavedBy(job => job.Work.Done);

    /// <summary>Share of the value saved by an order on paper: 0 most worth by the minute first, 1 nearest limit first.</summary>
    public double SavedOnPaper(int order) => SavedBy(job => job.OnPaper[order].Done);

    public static bool IsLate(ReplayedJob job) => (job.Work.Ended ?? job.Planned[^1].End) > job.Limit || (job.Work.Done is null && job.Planned[^1].End > job.Limit);

    public string Line(string name) => string.Create(
        CultureInfo.InvariantCulture,
        $"{name,-16} {places,3} places, {jobs.Count,5} jobs, {planned.Count,5} planned, {worked.Count,5} worked | late: {LastEndLate:P1} of last ends, {WorkedLate:P1} worked, ")
        + string.Create(CultureInfo.InvariantCulture, $"{Share(planned, job => job.Planned.Any(plan => plan.End > job.Limit)):P1} in any plan, {Share(planned, job => job.Planned[^1].LatestEnd > job.Limit):P1} if begun at the last start, ")
        + string.Create(CultureInfo.InvariantCulture, $"{HeedlessLate:P1} without stops; {Share(stops, IsLate):P1} of told stops | saved {Saved:P1}, by worth {SavedOnPaper(0):P1}, by limit {SavedOnPaper(1):P1}");

    /// <summary>People were told that this work may still go on when, by the later analysis, it may not.</summary>
    private static bool IsLate(ToldStop told) => !(told.Stop <= Instant.Max(told.At, told.Limit!.Value));

    private double SavedBy(Func<ReplayedJob, Instant?> done) =>
        jobs.Where(job => done(job) <= job.Limit).Sum(job => job.Value) / jobs.Sum(job => job.Value);

    private static double Share<T>(List<T> of, Func<T, bool> which) => of.Count == 0 ? double.NaN : (double)of.Count(which) / of.Count;
}
