using StormClock.Core.Garden;
using StormClock.Core.Hazards;

namespace StormClock.Core.Plan;

/// <summary>What a plan is made from.</summary>
/// <param name="Stops">When each class of work stops at each site; a site or class without an entry never stops.</param>
/// <param name="Horizon">Nothing is planned beyond this.</param>
public sealed record PlanRequest(
    GardenBook Book,
    IReadOnlyDictionary<string, JobState> States,
    IReadOnlyDictionary<(string SiteId, WorkClass Class), StopTimes> Stops,
    Instant Now,
    Instant Horizon)
{
    /// <summary>Why a job is better left than done, by job id.</summary>
    public IReadOnlyDictionary<string, LeftReason> BetterLeft { get; init; } = new Dictionary<string, LeftReason>();

    /// <summary>What the forecast lets less be done in, by site id; a site without an entry has fair weather.</summary>
    public IReadOnlyDictionary<string, WorkWeather> Weather { get; init; } = new Dictionary<string, WorkWeather>();

    /// <summary>The plan that people were last told, from which this one departs only for a reason; null when none was.</summary>
    public ToldPlan? Before { get; init; }

    public Instant StopOf(Job job) =>
        StopTimesOf(job)?.Earliest is { } stop && stop < Horizon ? stop : Horizon;

    public StopTimes? StopTimesOf(Job job) => Stops.GetValueOrDefault((Book.SiteOf(Book.AreaOf(Book.ItemOf(job))).Id, job.Class));

    public WorkWeather WeatherAt(Site site) => Weather.GetValueOrDefault(site.Id, WorkWeather.Fair);

    /// <summary>Not done, and nothing was said that keeps it out: for want of time or of a person it stays in.</summary>
    public bool IsOpen(Job job) => !Is(job, JobProgress.Done) && (!Is(job, JobProgress.Cannot) || WhyNot(job) is CannotWhy.NoTime or CannotWhy.NeedsPerson);

    /// <summary>Somebody wants it to wait.</summary>
    public bool IsPutOff(Job job) => Is(job, JobProgress.Later) || WhyNot(job) == CannotWhy.NoTime;

    /// <summary>Why somebody said that it cannot be done; null when nobody did, or gave no reason.</summary>
    public CannotWhy? WhyNot(Job job) => Is(job, JobProgress.Cannot) ? States[job.Id].Why : null;

    public bool Is(Job job, JobProgress progress) => States.TryGetValue(job.Id, out var state) && state.Progress == progress;
}

/// <summary>What people were told of a job.</summary>
public sealed record ToldJob(string JobId, Instant Start, IReadOnlyList<string> People);

/// <summary>A plan as it was told.</summary>
/// <param name="Stops">Earliest stop of each class as told with it.</param>
public sealed record ToldPlan(IReadOnlyList<ToldJob> Jobs, IReadOnlyDictionary<WorkClass, Instant> Stops);
