using StormClock.Core.Garden;

namespace StormClock.Service.Tests.Replays;

/// <summary>
/// People who keep to the plan in force: they begin each job when it says and report it done when it says. A job under way goes on when
/// a new plan still has it, and otherwise until its class stops as now told; when the garden closes everything is left at once.
/// </summary>
internal sealed class PromptPeople(GardenBook book)
{
    private readonly Dictionary<string, WorkClass> classes = book.Jobs.DistinctBy(job => job.Id).ToDictionary(job => job.Id, job => job.Class);
    private readonly Dictionary<string, ReplayJob> underWay = [];

    /// <summary>Last end of the work on each job that was begun, done or broken off.</summary>
    private readonly Dictionary<string, Instant> ended = [];

    public Dictionary<string, JobState> States { get; private set; } = [];

    /// <summary>By job: as every plan in force had it, in order.</summary>
    public Dictionary<string, List<ReplayJob>> Planned { get; } = [];

    private ReplayPlan Plan { get; set; } = ReplayPlan.None;

    /// <summary>When somebody next begins or ends a job.</summary>
    public Instant? Next => Plan.Jobs.Where(job => !IsTouched(job.Id)).Select(job => job.Start).Concat(underWay.Values.Select(job => job.End)).Select(at => (Instant?)at).Min();

    /// <summary>A new spell of danger begins with a clean sheet: what was done before has been undone.</summary>
    public void BeginAnew() => (States, Plan) = ([], ReplayPlan.None);

    /// <summary>Reports what is done by now; false when nothing was.</summary>
    public bool Finish(Instant now)
    {
        var over = underWay.Values.Where(job => job.End <= now).ToList();
        foreach (var job in over) End(job, job.End, done: true);
        return over.Count > 0;
    }

    public void TakeUp(ReplayPlan plan, Instant now)
    {
        Plan = plan;
        foreach (var job in plan.Jobs)
        {
            if (!Planned.TryGetValue(job.Id, out var plans)) Planned[job.Id] = plans = [];
            plans.Add(job);
        }

        var planned = plan.Jobs.ToDictionary(job => job.Id);
        foreach (var job in underWay.Values.ToList())
        {
            if (planned.TryGetValue(job.Id, out var again)) underWay[job.Id] = job with { End = Instant.Min(again.End, job.End) };
            else if (plan == ReplayPlan.None) End(job, now, done: false);
            else if (plan.Stops.GetValueOrDefault(classes[job.Id]) is { } stop && stop < job.End) End(job, Instant.Max(now, stop), done: false);
        }
    }

    public void Begin(Instant now)
    {
        foreach (var job in Plan.Jobs.Where(job => job.Start <= now && !IsTouched(job.Id)).ToList())
        {
            underWay[job.Id] = job;
            States[job.Id] = new(job.Id, JobProgress.Started, job.Start, job.By);
        }
    }

    public WorkDone WorkOn(string job) => new(
        ended.TryGetValue(job, out var at) ? at : null,
        States.GetValueOrDefault(job) is { Progress: JobProgress.Done, At: var done } ? done : null);

    private bool IsTouched(string id) => underWay.ContainsKey(id) || States.GetValueOrDefault(id)?.Progress == JobProgress.Done;

    private void End(ReplayJob job, Instant at, bool done)
    {
        underWay.Remove(job.Id);
        ended[job.Id] = at;
        if (done) States[job.Id] = new(job.Id, JobProgress.Done, at, job.By);
        else States.Remove(job.Id);
    }
}
