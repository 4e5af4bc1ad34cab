using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Wording;

namespace StormClock.Service.Calendars;

/// <summary>
/// Brings the calendars of a garden's people in line with a decision. Each event counts its own changes: derived from the
/// clock or from the told changes of the plan, its sequence could stand still while its times moved, or rise for nothing.
/// </summary>
public static class CalendarChanges
{
    /// <summary>Work that can begin now begins a little later with every new plan; that alone is no change.</summary>
    private static readonly Duration SameTime = Duration.FromMinutes(15);

    /// <summary>The calendars that follow; the very same object when nothing in them changes.</summary>
    /// <param name="installationId"><see cref="Meta.InstallationId"/>, for the names of events.</param>
    public static GardenCalendar Next(GardenCalendar before, GardenBook book, Decision decision, string installationId, Instant now)
    {
        if (decision.Standing.Stage.EpisodeId is not { } episode) return before.EpisodeId is null ? before : GardenCalendar.Empty;

        var wanted = Wanted(book, decision, episode, installationId, now);
        var known = before.EpisodeId == episode ? before.Events : [];
        var knownUids = known.Select(told => told.Uid).ToHashSet();
        List<CalendarEvent> next =
        [
            .. known.Select(told => Change(told, wanted.GetValueOrDefault(told.Uid), now)),
            .. wanted.Values.Where(fresh => !knownUids.Contains(fresh.Uid)),
        ];
        return before.EpisodeId == episode && next.SequenceEqual(known) ? before : new(episode, next);
    }

    /// <summary>The same calendars after letters have carried these events.</summary>
    public static GardenCalendar Tell(GardenCalendar calendar, IReadOnlySet<string> uids) =>
        calendar with { Events = [.. calendar.Events.Select(told => uids.Contains(told.Uid) ? told with { Told = true } : told)] };

    /// <summary>What the plan asks of each person, by the event's name; nothing once nobody is to be told of work.</summary>
    private static Dictionary<string, CalendarEvent> Wanted(GardenBook book, Decision decision, string episode, string installationId, Instant now)
    {
        var isOver = decision.Order != OfficialOrder.None
            || Halt.WorkIsOver(decision.Standing.Stage.Stage, decision.Leave, decision.LeaveBy, now);
        if (isOver || decision.Plan is not { } plan) return [];

        var stop = plan.WorkStops.GetValueOrDefault(WorkClass.Ground)?.Earliest;
        var people = plan.Jobs.ToDictionary(job => job.Job.Id, job => job.People);
        var jobs = ToldWork.Keep([.. plan.Jobs.Select(job => Line(book, job))], ToldWork.Limit(decision.LeaveBy, stop));
        var events = from job in jobs from person in people[job.Token] select Event(person, job);
        return events.ToDictionary(wanted => wanted.Uid);

        CalendarEvent Event(string person, BriefJob job)
        {
            var speech = Speech.Of(book.People.First(one => one.Id == person), book.Units);
            var uid = OutboxIds.Named(Fingerprint.Of("event", installationId, book.Id, episode, person, job.Token));
            var start = job.Start!.Value;
            return new(
                uid, person, job.Token, Words.Title(job, speech), Words.Place(job),
                start, start + Duration.FromMinutes(job.Minutes), job.StartBy!.Value, 0, now);
        }
    }

    private static BriefJob Line(GardenBook book, PlannedJob planned) =>
        BriefLines.Line(book, planned.Job) with { Start = planned.Start, StartBy = planned.StartBy };

    private static CalendarEvent Change(CalendarEvent told, CalendarEvent? wanted, Instant now)
    {
        if (wanted is null) return told.TakenBack ? told : told with { TakenBack = true, Sequence = told.Sequence + 1, ChangedAt = now };
        if (!told.TakenBack && IsSame(told, wanted)) return told;
        return wanted with { Sequence = told.Sequence + 1, Told = told.Told };
    }

    private static bool IsSame(CalendarEvent told, CalendarEvent wanted)
    {
        var later = wanted.Start - told.Start;
        return later >= Duration.Zero && later < SameTime
            && told with { Start = wanted.Start, End = told.End + later, Sequence = 0, ChangedAt = wanted.ChangedAt, Told = false } == wanted;
    }
}
