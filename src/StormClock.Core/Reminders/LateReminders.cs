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

    /// <summary>So long without an answer says as much as further messages would (C): work is not late at night, nor while a plan has it for another day.</summary>
    private static readonly Duration LongSilence = Duration.FromHours(6);

    private const int ToSecondAddresses = 2;

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
        if (channel == Reach.Second) return mine && rounds >= ToSecondAddresses;
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
        var told = now.Book.People.Select(person => now.Sent(person, ReminderReason.Late).Where(sent => sent.At >= since && now.Now - sent.At >= Every).ToList()).ToList();
        var rounds = told.Max(sent => sent.Select(one => one.Occasion).Distinct().Count());
        return told.SelectMany(sent => sent).Any(sent => now.Now - sent.At >= LongSilence) ? Math.Max(rounds, ToSecondAddresses) : rounds;
    }
}
