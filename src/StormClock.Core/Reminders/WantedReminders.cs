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

    public static IReadOnlyList<Reminder> For(Situation now)
    {
        if (now.Stage.EpisodeId is null) return [.. Rationing.OneAWeek(ListeningReminders.For(now).Where(reminder => now.Now < reminder.UsefulUntil), now.Quiet, now.SentAt, now.Now)];
        return
        [
            .. now.Book.People
                .SelectMany(person => now.Reach.Of(person).Select(channel => (person, channel)))
                .SelectMany(to => Rationing.Of(ForPerson(now, to.person, to.channel).Where(reminder => now.Now < reminder.UsefulUntil), now.Quiet, now.SentAt, now.Now)),
            .. now.Book.People.Where(person => person.SecondEmail is not null).Select(person => Late(now, person, Reach.Second)).OfType<Reminder>().Where(reminder => now.Now < reminder.UsefulUntil),
        ];
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
                if (InReminders.For(now, person, (reason, occasion, moment, until) => Make(now, person, channel, reason, occasion, moment, until, urgent: true)) is { } notIn) yield return notIn;
                break;
            default:
                foreach (var reminder in Work(now, person, channel)) yield return reminder;
                break;
        }
    }

    /// <summary>Helpers hear of work only when some of it is theirs, or late, or when all that was theirs has fallen out.</summary>
    private static IEnumerable<Reminder> Work(Situation now, Person person, string channel)
    {
        if (Late(now, person, channel) is { } late) yield return late;
        if (!now.IsTold(person) && !now.Plan!.Jobs.Any(job => job.People.Contains(person.Id)))
        {
            if (now.Announced.Idle.Contains(person.Id)) yield return OrderChanged(now, person, channel);
            yield break;
        }

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
        if (!now.SentAt.ContainsKey(key.ToString()) && (day.Moment < WorkDays.NotBefore(now) || day.Moment > now.Now)) return null;
        return new(key, person, day.Moment, until, false, Briefs.For(now, person, ReminderReason.WorkDay));
    }

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
        var told = now.Sent(person, ReminderReason.Leave).OrderBy(sent => sent.At).LastOrDefault();
        return told is null ? null : Make(now, person, channel, ReminderReason.OrderLifted, told.Occasion, told.At, now.Now + StageUse, urgent: true);
    }

    private static Reminder? Late(Situation now, Person person, string channel) =>
        LateReminders.For(now, person, channel, (occasion, until) => Make(now, person, channel, ReminderReason.Late, occasion, now.Now, until, urgent: true));

    private static Reminder StandDown(Situation now, Person person, string channel) =>
        Make(now, person, channel, ReminderReason.StandDown, $"{now.Stage.Changes}", now.Stage.Since, now.Stage.Since + OrderUse, urgent: false);

    private static IEnumerable<Reminder> Rechecks(Situation now, Person person, string channel) =>
        RecheckDays.Due(now, person).Select(day => Make(now, person, channel, ReminderReason.Recheck, day.Occasion, day.At, day.At + RecheckUse, urgent: false));

    private static Reminder FeedSilent(Situation now, Person person, string channel, Instant since) =>
        Make(now, person, channel, ReminderReason.FeedSilent, $"{since:uuuu-MM-dd'T'HH:mm'Z'}", now.Now, now.Now + StageUse, urgent: false);

    private static Reminder Make(
        Situation now, Person person, string channel, ReminderReason reason, string occasion, Instant moment, Instant until, bool urgent) =>
        new(Key(now, person, channel, reason, occasion), person, moment, until, urgent, Briefs.For(now, person, reason));

    private static ReminderKey Key(Situation now, Person person, string channel, ReminderReason reason, string occasion) =>
        new(now.Book.Id, now.Stage.EpisodeId!, person.Id, reason, occasion, channel);
}
