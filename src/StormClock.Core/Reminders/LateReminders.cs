using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>
/// Late work, one message that lists all of it, at most one in two hours a person: first to those whose work it is, with the next
/// one to everybody who works, and with the one after that to their second addresses too.
/// </summary>
internal static class LateReminders
{
    private static readonly Duration Every = Duration.FromHours(2);

    /// <param name="make">Makes a reminder of an occasion and the end of its use.</param>
    public static Reminder? For(Situation now, Person person, string channel, Func<string, Instant, Reminder> make)
    {
        if (person.Role == PersonRole.Keeper && !now.IsTold(person)) return null;
        if (!LateWork.Of(now).Any(late => Concerns(now, late, person, channel))) return null;
        var last = now.Sent(person, ReminderReason.Late).OrderBy(sent => sent.At).LastOrDefault();
        var occasion = last is not null && now.Now - last.At < Every ? last.Occasion : $"{now.Now:uuuu-MM-dd'T'HH'Z'}";
        return make(occasion, Instant.Min(now.Now + Every, now.StopEarliest ?? Instant.MaxValue));
    }

    private static bool Concerns(Situation now, PlannedJob late, Person person, string channel)
    {
        var (mine, rounds) = (late.People.Contains(person.Id), Rounds(now, late));
        if (channel == Reach.Second) return mine && rounds >= 2;
        return mine || rounds >= 1 || !now.Book.People.Any(other => late.People.Contains(other.Id) && now.Reach.Of(other).Count > 0);
    }

    /// <summary>
    /// How often it has been told, with time left to answer: each message lists all late work, so any of them told this job. Where nobody
    /// has answered anything for longer, those before it count too: whoever does not hear of one job does not hear of the next.
    /// </summary>
    private static int Rounds(Situation now, PlannedJob late)
    {
        var silentSince = now.States.Values.Select(state => state.At).DefaultIfEmpty(Instant.MinValue).Max();
        var since = now.LateSince.TryGetValue(late.Job.Id, out var lateSince) ? Instant.Min(lateSince, silentSince) : silentSince;
        return now.Book.People.Max(person => now.Sent(person, ReminderReason.Late).Where(sent => sent.At >= since && now.Now - sent.At >= Every).Select(sent => sent.Occasion).Distinct().Count());
    }
}
