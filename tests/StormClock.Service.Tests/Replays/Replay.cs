using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Stages;
using StormClock.Core.Units;
using StormClock.Core.Worth;

namespace StormClock.Service.Tests.Replays;

/// <summary>What became of a job in somebody's hands.</summary>
/// <param name="Ended">When work on it ended, done or broken off; null when it was never begun.</param>
/// <param name="Done">When it was done; null when it never was.</param>
internal sealed record WorkDone(Instant? Ended, Instant? Done);

/// <summary>One job of a garden in one storm at one place, against what came.</summary>
/// <param name="Limit">When its class of work had to stop, as later analysed; null when that wind never came.</param>
/// <param name="Value">What having it done saves at the peak gust that came, hazard to others included.</param>
/// <param name="Planned">As every plan in force had it, in order; empty when none did.</param>
/// <param name="OnPaper">By those with paper.</param>
internal sealed record ReplayedJob(Job Job, Instant? Limit, double Value, IReadOnlyList<ReplayJob> Planned, WorkDone Work, IReadOnlyList<WorkDone> OnPaper);

/// <summary>The stop of a class of work as told with a plan; null when none was expected.</summary>
internal sealed record ToldStop(WorkClass Class, Instant At, Instant? Stop, Instant? Limit);

/// <summary>
/// An archived storm played through the one door for a garden at a place, advisory by advisory, with people who keep to the plan; and the
/// same news to two people with paper, and to one who heeds no stop.
/// </summary>
internal sealed class Replay
{
    private static readonly Duration Horizon = Duration.FromHours(120);

    /// <summary>So long after its ground work stopped, as later analysed, nobody is watched any more.</summary>
    private static readonly Duration WatchedAfter = Duration.FromHours(24);

    /// <summary>One of those with paper goes on without any stop, so that it shows what the stops hold back.</summary>
    public const int Heedless = 2;

    private static readonly Dictionary<(string, WorkClass), StopTimes> NoStops = [];

    private readonly GardenBook book;
    private readonly IReadOnlyList<CycloneAdvisory> advisories;
    private readonly StormDesk desk = new();
    private readonly MemberMemory members = new();
    private readonly WorthMemory worths = new();
    private readonly PromptPeople people;
    private readonly PromptPeople[] papers;
    private readonly List<(WorkClass Class, Instant At, Instant? Stop)> stops = [];
    private readonly Dictionary<string, Instant> sent = [];
    private AdvisoryLedger ledger = AdvisoryLedger.Empty;
    private GardenStanding standing;
    private Instant? wake;

    private Replay(GardenBook book, IReadOnlyList<CycloneAdvisory> advisories)
    {
        (this.book, this.advisories) = (book, advisories);
        (people, papers) = (new(book), [new(book), new(book), new(book)]);
        standing = GardenStanding.Calm(advisories[0].Issued);
    }

    /// <param name="advisories">In order of issue.</param>
    public static (IReadOnlyList<ReplayedJob> Jobs, IReadOnlyList<ToldStop> Stops) Of(GardenBook book, IReadOnlyList<CycloneAdvisory> advisories, AnalysedStorm came)
    {
        var limits = new Limits(book, came, advisories[0].Issued);
        var replay = new Replay(book, advisories);
        replay.Play(limits.Of(WorkClass.Ground) is { } ground ? ground + WatchedAfter : advisories[^1].Issued);
        return ([.. limits.Jobs.Select(replay.Outcome)], [.. replay.stops.Select(stop => new ToldStop(stop.Class, stop.At, stop.Stop, limits.Of(stop.Class)))]);
    }

    private ReplayedJob Outcome((Job Job, Instant? Limit, double Value) one) => new(
        one.Job, one.Limit, one.Value, people.Planned.GetValueOrDefault(one.Job.Id, []), people.WorkOn(one.Job.Id), [.. papers.Select(paper => paper.WorkOn(one.Job.Id))]);

    private void Play(Instant until)
    {
        var heard = 0;
        while (true)
        {
            Instant?[] next = [heard < advisories.Count ? advisories[heard].Issued : null, wake, people.Next, .. papers.Select(paper => paper.Next)];
            if (next.Min() is not { } now || now > until) return;

            var news = wake <= now;
            for (; heard < advisories.Count && advisories[heard].Issued <= now; heard++, news = true) ledger = ledger.With(advisories[heard], now);
            if (people.Finish(now) | news) Decide(now);
            foreach (var paper in papers) paper.Finish(now);
            if (news) PlanOnPaper(now);
            foreach (var one in papers.Prepend(people)) one.Begin(now);
        }
    }

    private void Decide(Instant now)
    {
        var decision = desk.Decide(ledger, book, standing, people.States, sent, now);
        if (decision.Standing.Stage.EpisodeId is { } episode && episode != standing.Stage.EpisodeId)
        {
            foreach (var one in papers.Prepend(people)) one.BeginAnew();
        }

        (standing, wake) = (decision.Standing, decision.NextWake);
        foreach (var reminder in decision.Wanted.Where(reminder => reminder.Moment <= now)) sent.TryAdd(reminder.Key.ToString(), now);
        var plan = ReplayPlan.Of(decision.Plan);
        stops.AddRange(plan.Stops.Select(stop => (stop.Key, now, stop.Value)));
        people.TakeUp(plan, now);
    }

    /// <summary>The stage and the stops are those of the garden; only the order of the work is theirs.</summary>
    private void PlanOnPaper(Instant now)
    {
        var working = standing.Stage.Stage is > Stage.NothingDue and < Stage.GardenClosed;
        var timeline = HazardTimeline.Of(ledger, book, now, members.Members);
        var outlook = GardenOutlook.Of(timeline, book).HeldTo(standing.Stop.At);
        var valued = worths.Of(book, timeline.Winds, timeline.Water);
        for (var order = 0; order < papers.Length; order++)
        {
            var heeds = order != Heedless;
            var plan = outlook.WorkMatters && (working || (!heeds && standing.Stage.Stage == Stage.GardenClosed))
                ? PaperPlan.Of(new(valued.Book, papers[order].States, heeds ? outlook.Stops : NoStops, now, now + Horizon) { BetterLeft = valued.BetterLeft }, heeds ? order : 0)
                : ReplayPlan.None;
            papers[order].TakeUp(plan, now);
        }
    }

    /// <summary>When work had to stop and what it was worth, as later analysed.</summary>
    private sealed class Limits
    {
        private readonly Dictionary<(string Site, WorkClass Class), Instant?> stops;

        public Limits(GardenBook book, AnalysedStorm came, Instant from)
        {
            stops = book.Sites
                .SelectMany(site => book.Limits.Select(limit => (Key: (site.Id, limit.Key), At: came.First(site.At, ClassStops.MarineKt(limit.Value, site.Terrain), from))))
                .ToDictionary(stop => stop.Key, stop => stop.At);
            var peaks = book.Sites.ToDictionary(site => site.Id, site => new PeakGusts([WindChain.GustAt10M(Wind.KtToMps(came.PeakKt(site.At)))]));
            Jobs = [.. book.Items.SelectMany(item =>
            {
                var area = book.AreaOf(item);
                return ItemWorth.Of(item, area, book.SiteOf(area), peaks[area.SiteId])
                    .Select(worth => (worth.Job, stops[(area.SiteId, worth.Job.Class)], worth.LossAvoidedUsd + worth.HazardAvoidedUsd));
            })];
        }

        public Instant? Of(WorkClass work) => stops.Where(stop => stop.Key.Class == work).Min(stop => stop.Value);

        public IReadOnlyList<(Job Job, Instant? Limit, double Value)> Jobs { get; }
    }
}
