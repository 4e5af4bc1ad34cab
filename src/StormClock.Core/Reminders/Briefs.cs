using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>Gathers what one message says to one person.</summary>
internal static class Briefs
{
    public static MessageBrief For(Situation now, Person person, ReminderReason why)
    {
        var jobs = Jobs(now, person, why);
        return new(
            why,
            now.Book.Name,
            now.Book.Zone,
            now.Book.Units,
            now.Stage.Stage,
            now.Leave,
            now.LeaveBy,
            now.Stage.Reason,
            now.StopEarliest,
            now.StopLikely,
            jobs,
            Works(now, why) ? now.Plan!.Buy : [],
            Works(now, why) ? [.. now.Plan!.LeftOut.Select(left => Line(now.Book, left))] : [],
            why == ReminderReason.OrderChanged ? now.Announced.What : [],
            Cautions(why, jobs),
            NextBy(now, person));
    }

    /// <summary>Whether the message may speak of work at all: never once the garden is closed or an order holds.</summary>
    private static bool Works(Situation now, ReminderReason why) =>
        now.Plan is not null && !now.OrderInForce && now.Stage.Stage is > Stage.NothingDue and < Stage.GardenClosed
        && why is ReminderReason.StageRose or ReminderReason.WorkDay or ReminderReason.OrderChanged or ReminderReason.Leave;

    private static IReadOnlyList<BriefJob> Jobs(Situation now, Person person, ReminderReason why)
    {
        if (why is ReminderReason.StandDown or ReminderReason.Recheck) return now.After;
        if (!Works(now, why)) return [];
        return [.. now.Plan!.Jobs
            .Where(job => person.Role == PersonRole.Gardener || job.People.Contains(person.Id))
            .Select(job => Line(now.Book, job))];
    }

    public static BriefJob Line(GardenBook book, Item item, string token, JobKind kind)
    {
        var area = book.AreaOf(item);
        return new(token, kind, item.Name, item.Count, area.Name, book.SiteOf(area).Name, 0, [], [], null, null, WorkClass.Ground);
    }

    private static BriefJob Line(GardenBook book, PlannedJob planned) =>
        Line(book, planned.Job) with
        {
            PeopleNames = [.. planned.People.Select(id => book.People.First(person => person.Id == id).Name)],
            Start = planned.Start,
            StartBy = planned.StartBy,
        };

    private static BriefJob Line(GardenBook book, LeftOutJob left) =>
        Line(book, left.Job) with { Why = left.Why, Fallback = left.Fallback };

    private static BriefJob Line(GardenBook book, Job job) =>
        Line(book, book.ItemOf(job), job.Id, job.Kind) with { Minutes = job.Minutes, Bring = job.Materials, Class = job.Class };

    private static List<Caution> Cautions(ReminderReason why, IReadOnlyList<BriefJob> jobs)
    {
        List<Caution> cautions = [Caution.OfficialOrders];
        if (why == ReminderReason.Recheck)
        {
            return [.. cautions, Caution.Wires, Caution.Water, Caution.Trees, Caution.Sharp, Caution.Saw, Caution.Generator, Caution.Tetanus, Caution.Heat, Caution.Alone];
        }

        if (why == ReminderReason.StandDown) return [.. cautions, Caution.Lifting];
        if (why == ReminderReason.StageRose && jobs.Count == 0) cautions.Add(Caution.Lull);
        if (jobs.Any(job => job.Class == WorkClass.Ladder)) cautions.AddRange([Caution.Ladder, Caution.Wires]);
        if (jobs.Any(job => job.Class == WorkClass.Saw)) cautions.Add(Caution.Saw);
        if (jobs.Any(job => job.Class is WorkClass.Carry or WorkClass.Sheet)) cautions.Add(Caution.Lifting);
        if (jobs.Count > 0) cautions.AddRange([Caution.Lightning, Caution.Heat]);
        return cautions;
    }

    private static Instant? NextBy(Situation now, Person person) => now.Stage.Stage switch
    {
        Stage.NothingDue or Stage.Recheck => null,
        Stage.GardenClosed => now.WindOverBy,
        _ => WorkDays.Next(now.Book, person, now.Now),
    };
}
