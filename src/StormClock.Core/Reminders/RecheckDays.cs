using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>When the recheck is asked: at once, and for whom it concerns again after 3, 7 and 30 days while something is open; the last one always, for the book.</summary>
internal static class RecheckDays
{
    private static readonly int[] Later = [3, 7, 30];

    public static IEnumerable<(string Occasion, Instant At)> Due(Situation now, Person person) =>
        Of(now, person).Where(day => day.At <= now.Now);

    /// <summary>The next that will be asked as things are; null when none will.</summary>
    public static Instant? Next(Situation now, Person person) =>
        Of(now, person).Where(day => day.At > now.Now).Select(day => (Instant?)day.At).FirstOrDefault();

    private static IEnumerable<(string Occasion, Instant At)> Of(Situation now, Person person)
    {
        yield return ("first", now.Stage.Since);
        if (!now.IsTold(person)) yield break;
        foreach (var days in Later.Where(days => now.After.Count > 0 || days == Later[^1])) yield return ($"day-{days}", now.Stage.Since + Duration.FromDays(days));
    }
}
