using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Worth;

namespace StormClock.Core;

/// <summary>
/// The one door: from everything heard, the garden book, the state of its jobs and what was sent, to what holds now. The
/// same input gives the same decision; an instance only remembers wind members and values already worked out, since
/// they are worth keeping.
/// </summary>
/// <param name="quiet">Hours in which only urgent messages go out; null for none.</param>
public sealed class StormDesk(QuietHours? quiet = null)
{
    /// <summary>How far ahead work is planned (the reach of the forecasts).</summary>
    private static readonly Duration Horizon = Duration.FromHours(120);

    private readonly MemberMemory memory = new();
    private readonly WorthMemory worths = new();

    /// <param name="jobStates">Last word on each job of the episode in <paramref name="standing"/>, by job id.</param>
    /// <param name="sentAt">When each message was sent, by key.</param>
    /// <param name="silences">Sources that cannot be heard, or could not until lately; they never change a stage, only what is told.</param>
    /// <param name="reach">How each person is told; null for mail alone.</param>
    /// <param name="saidIn">When each person last said "I am in" in the episode in <paramref name="standing"/>, by person id; null for nobody.</param>
    public Decision Decide(
        AdvisoryLedger ledger,
        GardenBook garden,
        GardenStanding standing,
        IReadOnlyDictionary<string, JobState> jobStates,
        IReadOnlyDictionary<string, Instant> sentAt,
        Instant now,
        IReadOnlyList<SourceSilence>? silences = null,
        Reach? reach = null,
        IReadOnlyDictionary<string, Instant>? saidIn = null)
    {
        var timeline = HazardTimeline.Of(ledger, garden, now, memory.Members);
        var valued = worths.Of(garden, timeline.Winds, timeline.Water);
        var (outlook, next, kept) = Judge(timeline, garden, valued, standing, jobStates);
        var stage = next.Stage;
        var sameEpisode = stage.EpisodeId == standing.Stage.EpisodeId;
        var states = sameEpisode ? jobStates : new Dictionary<string, JobState>();

        var working = stage.Stage is > Stage.NothingDue and < Stage.GardenClosed;
        if (working && (kept is null || !sameEpisode)) kept = PlanWork(timeline, garden, valued, outlook, next, states);
        next = next with { Kept = kept };
        var plan = working ? kept?.Plan : null;
        if (plan is not null) next = next with { Announced = Tell(next.Announced, standing.Stage, stage, plan, garden, now) };

        var situation = new Situation(
            garden, stage, next.Announced, plan, outlook.LeaveBy, outlook.Order, outlook.OrderId, outlook.Source.ToLeave(outlook.LeaveBy),
            RecheckBy(garden, next.UnsafeUntil), working && timeline.IsStale ? timeline.Leading!.Issued : null,
            AfterList(garden, stage, states), sentAt, now)
        {
            Quiet = quiet,
            Reach = reach ?? Reach.MailOnly,
            Silences = silences ?? [],
            States = states,
            In = SaidSince(stage.Since, sameEpisode ? saidIn : null),
            UnsafeUntil = next.UnsafeUntil,
        };
        situation = situation with { LateSince = LateWork.Since(situation, sameEpisode ? standing.LateSince : new Dictionary<string, Instant>()) };
        return new(
            next with { LateSince = situation.LateSince }, plan, outlook.LeaveBy, outlook.Order, WantedReminders.For(situation), outlook.Cause,
            Wake.Next(garden, stage, outlook, plan, next.UnsafeUntil, now))
        {
            Peaks = stage.EpisodeId is null ? new Dictionary<string, PeakGusts>() : valued.Peaks,
        };
    }

    /// <summary>
    /// Which stage holds, what is remembered with it, and the plan that had a say in it; a new episode begins with a clean memory.
    /// </summary>
    private static (GardenOutlook Outlook, GardenStanding Next, KeptPlan? Plan) Judge(
        HazardTimeline timeline, GardenBook garden, ValuedGarden valued, GardenStanding standing, IReadOnlyDictionary<string, JobState> jobStates)
    {
        var now = timeline.AsOf;
        var told = GardenOutlook.Of(timeline, garden);
        var held = standing.Stage.Stage == Stage.Recheck ? HeldStop.None : standing.Stop;
        var stop = held.Next(told.GroundStop, timeline.NewestWord, timeline.IsLastWord, now);
        var outlook = told.HeldTo(stop.At);
        var alerted = standing.Alerted || timeline.Alerts.Any(alert => alert.Holds);
        var unsafeUntil = UnsafeUntil(standing, timeline, outlook);

        var plan = outlook.WorkMatters ? PlanWork(timeline, garden, valued, outlook, standing with { Stop = stop }, jobStates) : null;
        var signs = SignReader.Read(timeline, outlook, garden, FirstMainStartBy(plan?.Plan), alerted, unsafeUntil);
        var stage = StageRules.Next(garden.Id, standing.Stage, signs);
        if (stage.EpisodeId is null) return (outlook, new(stage, HeldStop.None, Announced.Nothing, false, null), plan);

        var announced = stage.EpisodeId == standing.Stage.EpisodeId ? standing.Announced : Announced.Nothing;
        return (outlook, new(stage, stop, announced, alerted, unsafeUntil) { Kept = standing.Kept }, plan);
    }

    /// <summary>
    /// When the wind was last expected to be over: as the newest advisory that still brings it has it; now, while a warning stands
    /// over a closed garden or says that it blows; and no later than an advisory that brings it no more.
    /// </summary>
    private static Instant? UnsafeUntil(GardenStanding standing, HazardTimeline timeline, GardenOutlook outlook)
    {
        if (outlook.Ground.LastEnd is { } end) return end;
        if (outlook.Warned && (standing.Stage.Stage == Stage.GardenClosed || outlook.Earliest <= timeline.AsOf)) return timeline.AsOf;
        var known = standing.UnsafeUntil;
        return known is { } until && (timeline.Leading ?? timeline.LastFinal) is { } newest && newest.Issued < until ? newest.Issued : known;
    }

    /// <summary>The plan in force, or one made anew where there is an occasion for it.</summary>
    private static KeptPlan PlanWork(
        HazardTimeline timeline, GardenBook garden, ValuedGarden valued, GardenOutlook outlook, GardenStanding standing, IReadOnlyDictionary<string, JobState> states)
    {
        var now = timeline.AsOf;
        var occasion = new PlanOccasion(garden, timeline.StandingIds, states, standing.Stop.At, outlook.WorkMatters);
        if (standing.Kept is { } kept && kept.Holds(occasion, now)) return kept;
        var weather = garden.Sites.ToDictionary(site => site.Id, site => WorkWeather.Of(site, timeline.Points, timeline.RainNotes));
        if (!outlook.WorkMatters)
        {
            var rain = RainWork.Of(valued.Book);
            return new(Planner.Plan(new(rain, states, RainWork.Stops(valued.Book, outlook.Rain), now, now + Horizon) { Weather = weather }), occasion);
        }

        var request = new PlanRequest(valued.Book, states, outlook.Stops, now, now + Horizon) { BetterLeft = valued.BetterLeft, Before = standing.Announced.Plan(), Weather = weather };

        // What stays undone was counted on when the item's other work was valued.
        var plan = Planner.Plan(request);
        var again = valued.Without(plan.LeftOut.Select(left => left.Job.Id).ToHashSet());
        return new(ReferenceEquals(again, valued) ? plan : Planner.Plan(request with { Book = again.Book, BetterLeft = again.BetterLeft }), occasion);
    }

    /// <summary>Picking and pruning are slow work; every other job before the last round is main work.</summary>
    private static Instant? FirstMainStartBy(GardenPlan? plan) =>
        plan?.Jobs
            .Where(job => job.Job.Kind is not (JobKind.Pick or JobKind.Prune) && !job.Job.LastRound)
            .Select(job => (Instant?)job.StartBy)
            .Min();

    /// <summary>A message that carries the plan for another reason tells it too; only what is left is news of its own.</summary>
    private static Announced Tell(Announced told, StageStanding before, StageStanding stage, GardenPlan plan, GardenBook garden, Instant now) =>
        stage.Changes != before.Changes || WorkDays.BeginsAt(garden, now) ? PlanNews.Told(told, plan) : PlanNews.Next(told, plan);

    /// <summary>The end of the first light in which the recheck could be asked; the official end may still make it later.</summary>
    private static Instant? RecheckBy(GardenBook garden, Instant? unsafeUntil) =>
        unsafeUntil is { } until ? Wake.NextLight(garden, until + SignReader.StillFor)?.End : null;

    /// <summary>A word from an earlier closing says nothing of where people are now.</summary>
    private static Dictionary<string, Instant> SaidSince(Instant closed, IReadOnlyDictionary<string, Instant>? saidIn) =>
        (saidIn ?? new Dictionary<string, Instant>()).Where(said => said.Value >= closed).ToDictionary();

    private static IReadOnlyList<BriefJob> AfterList(GardenBook garden, StageStanding stage, IReadOnlyDictionary<string, JobState> states)
    {
        var lines = stage.Stage switch
        {
            Stage.Recheck => RecheckList.After(garden, states),
            Stage.NothingDue when stage.StoodDown is not null => RecheckList.Undo(garden, states),
            _ => [],
        };
        return [.. lines.Select(line => BriefLines.Find(garden, line.Token)).OfType<BriefJob>()];
    }
}
