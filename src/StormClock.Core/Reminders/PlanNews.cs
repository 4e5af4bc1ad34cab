using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>What is worth telling of a changed plan.</summary>
public enum PlanNewsKind
{
    /// <summary>The work may have to stop sooner than last told.</summary>
    StopsSooner,
    StartSooner,
    NoLongerFit,
}

/// <param name="JobIds">The jobs it is true of; none where it is of all work.</param>
public sealed record PlanNewsLine(PlanNewsKind Kind, IReadOnlyList<string> JobIds);

/// <summary>
/// Compares a plan with what people were last told and says whether the difference is worth a message (science.md 4.3, 8.4).
/// Only what the forecast or a missed start has moved counts: that a plan made later looks different is no news.
/// </summary>
public static class PlanNews
{
    private static readonly Duration StartEarlier = Duration.FromHours(1);
    private static readonly Duration StopEarlier = Duration.FromHours(2);
    private static readonly Duration AtMostEvery = Duration.FromHours(2);

    /// <summary>The announced state that follows; <see cref="Announced.Changes"/> is one higher exactly when there is news.</summary>
    public static Announced Next(Announced told, GardenPlan plan)
    {
        var news = Changes(told, plan);
        if (news.Count == 0 || plan.Made - told.ChangedAt < AtMostEvery) return told;
        return Told(told, plan) with { Changes = told.Changes + 1, ChangedAt = plan.Made, News = news, Idle = Idle(told, plan) };
    }

    /// <summary>The announced state once this plan has been told for another reason (a new stage, a work day).</summary>
    public static Announced Told(Announced told, GardenPlan plan) =>
        told with
        {
            Stops = plan.WorkStops.Where(stop => stop.Value.Earliest is not null).ToDictionary(stop => stop.Key, stop => stop.Value.Earliest!.Value),
            StartBys = plan.Jobs.ToDictionary(job => job.Job.Id, job => job.StartBy),
            Jobs = [.. plan.Jobs.Select(job => new ToldJob(job.Job.Id, job.Start, job.People))],
        };

    private static IReadOnlyList<string> Idle(Announced told, GardenPlan plan) =>
        [.. told.Jobs.SelectMany(job => job.People).Except(plan.Jobs.SelectMany(job => job.People)).Order(StringComparer.Ordinal)];

    private static List<PlanNewsLine> Changes(Announced told, GardenPlan plan)
    {
        var news = new List<PlanNewsLine>();
        if (Sooner(WorkClass.Ground) >= StopEarlier) news.Add(new(PlanNewsKind.StopsSooner, []));

        List<string> sooner = [.. plan.Jobs
            .Where(job => told.StartBys.TryGetValue(job.Job.Id, out var before) && before - job.StartBy >= StartEarlier && Sooner(job.Job.Class) >= StartEarlier)
            .Select(job => job.Job.Id)];
        if (sooner.Count > 0) news.Add(new(PlanNewsKind.StartSooner, sooner));

        List<string> lost = [.. plan.LeftOut
            .Where(left => !left.Answered && told.StartBys.TryGetValue(left.Job.Id, out var before) && (before < plan.Made || Sooner(left.Job.Class) >= StartEarlier))
            .Select(left => left.Job.Id)];
        if (lost.Count > 0) news.Add(new(PlanNewsKind.NoLongerFit, lost));
        return news;

        Duration Sooner(WorkClass work) => GardenStops.Sooner(plan.WorkStops[work], told.Stops, work);
    }
}
