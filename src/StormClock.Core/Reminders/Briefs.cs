using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;
using StormClock.Core.Units;

namespace StormClock.Core.Reminders;

/// <summary>Gathers what one message says to one person.</summary>
internal static class Briefs
{
    private static readonly Duration OneDay = Duration.FromHours(24);

    public static MessageBrief For(Situation now, Person person, ReminderReason why)
    {
        var jobs = Jobs(now, person, why);
        return new(
            why,
            now.Book.Name,
            now.Book.Zone,
            person.Units ?? now.Book.Units,
            now.Stage.Stage,
            now.Leave,
            now.LeaveBy,
            why == ReminderReason.Leave ? now.OrderReason : now.Stage.Reason,
            now.StopEarliest,
            now.StopLikely,
            jobs,
            Works(now, why) ? now.Plan!.Buy : [],
            Works(now, why) ? [.. now.Plan!.LeftOut.Concat(now.Plan.BetterLeft).Select(left => Line(now.Book, left))] : [],
            why == ReminderReason.OrderChanged ? [.. now.Announced.News.Select(news => News(now.Book, news))] : [],
            Cautions(now, why, jobs),
            NextBy(now, person, why))
        {
            SoonerStops = Works(now, why) ? SoonerStops(now, jobs) : [],
            ClosedSince = now.Stage.Stage == Stage.GardenClosed ? now.Stage.Since : null,
            In = now.Stage.Stage == Stage.GardenClosed ? InReminders.Of(now) : [],
            NotHeardOf = why == ReminderReason.NotIn ? [.. InReminders.NotHeardOf(now, person).Select(other => other.Name)] : [],
        };
    }

    /// <summary>Whether the message may speak of work at all: never once the garden is closed or an order holds.</summary>
    private static bool Works(Situation now, ReminderReason why) =>
        now.Plan is not null && !now.OrderInForce && now.Stage.Stage is > Stage.NothingDue and < Stage.GardenClosed
        && why is ReminderReason.StageChanged or ReminderReason.WorkDay or ReminderReason.OrderChanged or ReminderReason.Leave or ReminderReason.Late or ReminderReason.OrderLifted;

    private static IReadOnlyList<BriefJob> Jobs(Situation now, Person person, ReminderReason why)
    {
        if (why is ReminderReason.StandDown or ReminderReason.Recheck) return now.After;
        if (!Works(now, why)) return [];
        // By the hour that was told, not by one that a plan made since has moved on.
        if (why == ReminderReason.Late) return [.. LateWork.Of(now).Select(late => Line(now.Book, late) with { StartBy = now.Announced.StartBys[late.Job.Id] })];
        return [.. now.Plan!.Jobs
            .Where(job => person.Role == PersonRole.Gardener || job.People.Contains(person.Id))
            .Select(job => Line(now.Book, job))];
    }

    private static IReadOnlyList<ClassStop> SoonerStops(Situation now, IReadOnlyList<BriefJob> jobs) =>
    [
        .. from work in jobs.Select(job => job.Class).Distinct()
           let stop = now.Plan!.WorkStops.GetValueOrDefault(work)?.Earliest
           where stop is not null && now.StopEarliest is { } ground && Moments.QuarterBefore(stop.Value) < Moments.QuarterBefore(ground)
           orderby stop.Value, work
           select new ClassStop(work, stop.Value),
    ];

    private static BriefNews News(GardenBook book, PlanNewsLine news) => new(news.Kind, [.. news.JobIds.Select(id => BriefLines.Find(book, id)).OfType<BriefJob>()]);

    private static BriefJob Line(GardenBook book, PlannedJob planned) =>
        BriefLines.Line(book, planned.Job) with
        {
            PeopleNames = [.. planned.People.Select(id => book.People.First(person => person.Id == id).Name)],
            Start = planned.Start,
            StartBy = planned.StartBy,
        };

    private static BriefJob Line(GardenBook book, LeftOutJob left) =>
        BriefLines.Line(book, left.Job) with { Why = left.Why, Fallback = left.Fallback };

    private static IReadOnlyList<Caution> Cautions(Situation now, ReminderReason why, IReadOnlyList<BriefJob> jobs) =>
        now.Stage.Stage == Stage.GardenClosed ? CautionsFor.Closed : CautionsFor.Work(jobs, after: why == ReminderReason.Recheck);

    private static Instant? NextBy(Situation now, Person person, ReminderReason why) => now.Stage.Stage switch
    {
        _ when why == ReminderReason.Listening => ListeningReminders.Next(now),
        Stage.NothingDue => null,
        Stage.Recheck => RecheckDays.Next(now, person),
        Stage.GardenClosed => now.RecheckBy ?? now.Now + OneDay,
        _ => Moments.Sooner(WorkDays.Next(now.Book, person, Instant.Max(now.Now, WorkDays.NotBefore(now) - Duration.Epsilon)), now.StopEarliest > now.Now ? now.StopEarliest : null) ?? now.Now + OneDay,
    };
}
