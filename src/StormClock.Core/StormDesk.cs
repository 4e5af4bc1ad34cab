using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Core;

/// <summary>
/// The one door: from everything heard, the garden book, the state of its jobs and what was sent, to what holds now. The
/// same input gives the same decision; an instance only remembers wind members already computed, since thousands of them per
/// advisory and site are worth keeping.
/// </summary>
public sealed class StormDesk
{
    /// <summary>How far ahead work is planned (the reach of the forecasts).</summary>
    private static readonly Duration Horizon = Duration.FromHours(120);

    private readonly MemberMemory memory = new();

    public Decision Decide(
        AdvisoryLedger ledger,
        GardenBook garden,
        GardenStanding standing,
        IReadOnlyDictionary<string, JobState> jobStates,
        IReadOnlyDictionary<string, Instant> sentAt,
        Instant now)
    {
        var timeline = HazardTimeline.Of(ledger, garden, now, memory.Members);
        var told = GardenOutlook.Of(timeline, garden);
        var stop = standing.Stop.Next(told.GroundStop, timeline.NewestWord, timeline.IsLastWord);
        var outlook = told.HeldTo(stop.At);
        var plan = outlook.WorkMatters ? PlanWork(garden, outlook, jobStates, now) : null;
        var (alerted, unsafeUntil) = Remember(standing, timeline, outlook);
        var signs = SignReader.Read(timeline, outlook, garden, FirstMainStartBy(plan), alerted, unsafeUntil);
        var stage = StageRules.Next(garden.Id, standing.Stage, signs);

        var fresh = stage.EpisodeId != standing.Stage.EpisodeId;
        var states = fresh ? new Dictionary<string, JobState>() : jobStates;
        var working = stage.Stage is > Stage.NothingDue and < Stage.GardenClosed;
        plan = working ? plan ?? PlanWork(garden, outlook, states, now) : null;
        var announced = fresh ? Announced.Nothing : standing.Announced;
        if (plan is not null) announced = Tell(announced, standing.Stage, stage, plan, garden, now);
        var next = stage.EpisodeId is null
            ? new GardenStanding(stage, HeldStop.None, announced, false, null)
            : new GardenStanding(stage, stop, announced, alerted, unsafeUntil);

        var situation = new Situation(
            garden, stage, announced, plan, outlook.LeaveBy, outlook.Order != OfficialOrder.None, outlook.OrderId,
            FirstLook(garden, unsafeUntil), timeline.Stale && working ? timeline.Leading!.Issued : null,
            AfterList(garden, stage, states), sentAt, now);
        return new(next, plan, outlook.LeaveBy, WantedReminders.For(situation), outlook.Cause, Wake.Next(garden, stage, outlook, plan, unsafeUntil, now));
    }

    private static GardenPlan PlanWork(GardenBook garden, GardenOutlook outlook, IReadOnlyDictionary<string, JobState> states, Instant now) =>
        Planner.Plan(new(garden, states, outlook.Stops, now, now + Horizon));

    /// <summary>Picking and pruning are slow work; every other job is main work.</summary>
    private static Instant? FirstMainStartBy(GardenPlan? plan) =>
        plan?.Jobs.Where(job => job.Job.Kind is not (JobKind.Pick or JobKind.Prune) && !job.Job.LastRound).Select(job => (Instant?)job.StartBy).Min();

    /// <summary>A message that carries the plan for another reason tells it too; only what is left is news of its own.</summary>
    private static Announced Tell(Announced told, StageStanding before, StageStanding stage, GardenPlan plan, GardenBook garden, Instant now)
    {
        var rose = stage.Rises != before.Rises;
        var dayBegins = WorkDays.BeginsAt(garden, now);
        return rose || dayBegins ? PlanNews.Told(told, plan) : PlanNews.Next(told, plan);
    }

    /// <summary>What outlives the advisory that said it: that an alert stood, and when the wind was last expected to be over.</summary>
    private static (bool Alerted, Instant? UnsafeUntil) Remember(GardenStanding standing, HazardTimeline timeline, GardenOutlook outlook)
    {
        var alerted = standing.Alerted || timeline.Alerts.Any(alert => alert.Holds);
        if (outlook.Ground.LastEnd is { } end) return (alerted, end);
        var known = standing.UnsafeUntil;
        var newer = timeline.Leading?.Issued;
        return (alerted, known is { } until && newer is { } issued && issued < until ? Instant.Min(until, issued) : known);
    }

    private static Instant? FirstLook(GardenBook garden, Instant? unsafeUntil) =>
        unsafeUntil is { } until ? Wake.NextLight(garden, until + SignReader.StillFor) : null;

    private static IReadOnlyList<BriefJob> AfterList(GardenBook garden, StageStanding stage, IReadOnlyDictionary<string, JobState> states)
    {
        var lines = stage.Stage switch
        {
            Stage.Recheck => RecheckList.After(garden, states),
            Stage.NothingDue when stage.StoodDown is not null => RecheckList.Undo(garden, states),
            _ => [],
        };
        return [.. lines.Select(line => BriefLines.Line(garden, line.Item, line.Token, line.Kind))];
    }
}
