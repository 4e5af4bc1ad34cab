using StormClock.Core.Garden;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>
/// The messages that should exist for a garden right now. Desired state, not commands: computed anew each time, compared by
/// key with what was written and sent. Nothing here tells anybody to work once the garden is closed.
/// </summary>
public static class WantedReminders
{
    private static readonly Duration StageUse = Duration.FromHours(12);
    private static readonly Duration OrderUse = Duration.FromHours(24);
    private static readonly Duration RecheckUse = Duration.FromHours(36);
    private static readonly Duration ChangeUse = Duration.FromHours(6);
    private static readonly Duration LateEvery = Duration.FromHours(2);

    /// <summary>Days after the first recheck on which it is asked for again.</summary>
    private static readonly int[] LaterRechecks = [3, 7, 30];

    /// <summary>A day's message is not repeated this soon after another that carried the plan.</summary>
    private static readonly Duration PlanJustTold = Duration.FromHours(3);

    public static IReadOnlyList<Reminder> For(Situation now)
    {
        if (now.Stage.EpisodeId is null) return [];
        return [.. now.Book.People
            .SelectMany(person => now.Reach.Of(person).Select(channel => (person, channel)))
            .SelectMany(to => Rationing.Of(ForPerson(now, to.person, to.channel).Where(reminder => now.Now < reminder.UsefulUntil), now.Quiet, now.SentAt, now.Now))];
    }

    private static IEnumerable<Reminder> ForPerson(Situation now, Person person, string channel)
    {
        if (now.Leave || now.OrderInForce) yield return Leave(now, person, channel);
        else if (Lifted(now, person, channel) is { } lifted) yield return lifted;
        if (now.SilentSince is { } since && now.IsTold(person)) yield return FeedSilent(now, person, channel, since);
        foreach (var reminder in SilenceReminders.For(now, person, (reason, occasion, moment, until) => Make(now, person, channel, reason, occasion, moment, until, urgent: false))) yield return reminder;
        switch (now.Stage.Stage)
        {
            case Stage.NothingDue:
                if (now.IsTold(person) || now.After.Count > 0) yield return StandDown(now, person, channel);
                break;
            case Stage.Recheck:
                foreach (var recheck in Rechecks(now, person, channel)) yield return recheck;
                break;
            case Stage.GardenClosed:
                if (!now.OrderNow) yield return StageChanged(now, person, channel);
                break;
            default:
                foreach (var reminder in Work(now, person, channel)) yield return reminder;
                break;
        }
    }

    /// <summary>Helpers hear of work only when some of it is theirs.</summary>
    private static IEnumerable<Reminder> Work(Situation now, Person person, string channel)
    {
        if (!now.IsTold(person) && !now.Plan!.Jobs.Any(job => job.People.Contains(person.Id))) yield break;
        if (Late(now, person, channel) is { } late) yield return late;
        yield return StageChanged(now, person, channel);
        if (WorkDay(now, person, channel) is { } day) yield return day;
        if (now.Announced.Changes > 0 && now.Plan!.Jobs.Count + now.Plan.LeftOut.Count > 0) yield return OrderChanged(now, person, channel);
    }

    private static Reminder StageChanged(Situation now, Person person, string channel)
    {
        var stage = now.Stage;
        var until = stage.Since + (stage.Stage <= Stage.SlowWork ? OrderUse : StageUse);
        if (stage.Stage < Stage.GardenClosed && now.StopEarliest is { } stop) until = Instant.Min(until, stop);
        return Make(now, person, channel, ReminderReason.StageChanged, $"{stage.Stage}-{stage.Changes}", stage.Since, until, urgent: stage.Stage >= Stage.GardenClosed);
    }

    private static Reminder? WorkDay(Situation now, Person person, string channel)
    {
        var date = now.Now.InZone(now.Book.Zone).Date;
        if (now.Plan!.Jobs.Count == 0 || WorkDays.On(now.Book, person, date) is not { } day) return null;
        var until = now.StopEarliest is { } stop ? Instant.Min(day.End, stop) : day.End;
        var key = Key(now, person, channel, ReminderReason.WorkDay, $"{date:uuuu-MM-dd}");
        if (!now.SentAt.ContainsKey(key.ToString()) && (LastTold(now) > day.Moment - PlanJustTold || day.Moment > now.Now)) return null;
        return new(key, person, day.Moment, until, false, Briefs.For(now, person, ReminderReason.WorkDay));
    }

    private static Instant LastTold(Situation now) =>
        now.Announced.ChangedAt is { } changed ? Instant.Max(now.Stage.Since, changed) : now.Stage.Since;

    private static Reminder OrderChanged(Situation now, Person person, string channel)
    {
        var at = now.Announced.ChangedAt!.Value;
        var until = now.StopEarliest is { } stop ? Instant.Min(at + ChangeUse, stop) : at + ChangeUse;
        return Make(now, person, channel, ReminderReason.OrderChanged, $"{now.Announced.Changes}", at, until, urgent: false);
    }

    /// <summary>Once when the order is heard, and again when its hour has come.</summary>
    private static Reminder Leave(Situation now, Person person, string channel) =>
        Make(now, person, channel, ReminderReason.Leave, $"{now.OrderId} {(now.OrderNow ? "now" : "ahead")}", now.Now, now.Now + OrderUse, urgent: true);

    /// <summary>
    /// Told of an order or leave-by in this episode, and none holds now: once. A stand down, a closed garden and a recheck say it themselves.
    /// </summary>
    private static Reminder? Lifted(Situation now, Person person, string channel)
    {
        if (now.Stage.Stage is Stage.NothingDue or Stage.GardenClosed or Stage.Recheck) return null;
        var told = Sent(now, person, ReminderReason.Leave).OrderBy(sent => sent.At).LastOrDefault();
        return told.Occasion is null ? null : Make(now, person, channel, ReminderReason.OrderLifted, told.Occasion, told.At, now.Now + StageUse, urgent: true);
    }

    /// <summary>
    /// One message that lists all late work, at most one in two hours: to those whose work it is, and when two more hours have
    /// gone by to everybody.
    /// </summary>
    private static Reminder? Late(Situation now, Person person, string channel)
    {
        var late = LateWork.Of(now).Where(job => job.Job.People.Contains(person.Id) || job.Overdue >= LateEvery).ToList();
        if (late.Count == 0) return null;
        var last = Sent(now, person, ReminderReason.Late).OrderBy(sent => sent.At).LastOrDefault();
        var occasion = last.Occasion is not null && now.Now - last.At < LateEvery ? last.Occasion : $"{now.Now:uuuu-MM-dd'T'HH'Z'}";
        return Make(now, person, channel, ReminderReason.Late, occasion, now.Now, Instant.Min(now.Now + LateEvery, now.StopEarliest ?? Instant.MaxValue), urgent: true);
    }

    /// <summary>Occasions of the messages that were sent to a person for a reason in this episode, by any channel.</summary>
    private static IEnumerable<(string? Occasion, Instant At)> Sent(Situation now, Person person, ReminderReason reason)
    {
        var begin = $"{now.Book.Id}|{now.Stage.EpisodeId}|{person.Id}|{reason}|";
        return now.SentAt.Where(sent => sent.Key.StartsWith(begin, StringComparison.Ordinal)).Select(sent => ((string?)sent.Key[begin.Length..sent.Key.LastIndexOf('|')], sent.Value));
    }

    private static Reminder StandDown(Situation now, Person person, string channel) =>
        Make(now, person, channel, ReminderReason.StandDown, $"{now.Stage.Changes}", now.Stage.Since, now.Stage.Since + OrderUse, urgent: false);

    /// <summary>At once, and again after 3, 7 and 30 days while something is open; the last one always, for the book.</summary>
    private static IEnumerable<Reminder> Rechecks(Situation now, Person person, string channel)
    {
        yield return Make(now, person, channel, ReminderReason.Recheck, "first", now.Stage.Since, now.Stage.Since + RecheckUse, urgent: false);
        if (!now.IsTold(person)) yield break;
        foreach (var days in LaterRechecks)
        {
            var at = now.Stage.Since + Duration.FromDays(days);
            if (at <= now.Now && (now.After.Count > 0 || days == LaterRechecks[^1])) yield return Make(now, person, channel, ReminderReason.Recheck, $"day-{days}", at, at + RecheckUse, urgent: false);
        }
    }

    private static Reminder FeedSilent(Situation now, Person person, string channel, Instant since) =>
        Make(now, person, channel, ReminderReason.FeedSilent, $"{since:uuuu-MM-dd'T'HH:mm'Z'}", now.Now, now.Now + StageUse, urgent: false);

    private static Reminder Make(
        Situation now, Person person, string channel, ReminderReason reason, string occasion, Instant moment, Instant until, bool urgent) =>
        new(Key(now, person, channel, reason, occasion), person, moment, until, urgent, Briefs.For(now, person, reason));

    private static ReminderKey Key(Situation now, Person person, string channel, ReminderReason reason, string occasion) =>
        new(now.Book.Id, now.Stage.EpisodeId!, person.Id, reason, occasion, channel);
}
