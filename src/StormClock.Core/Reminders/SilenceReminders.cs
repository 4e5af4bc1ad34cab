using StormClock.Core.Garden;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>
/// The messages about sources that cannot be heard while a storm stands: once when a spell of silence has grown too long, and
/// once when it is over. Sources that fell silent together are told together, else a dead network would be told once a source.
/// </summary>
internal static class SilenceReminders
{
    /// <summary>The news is told when it comes; half a day later a newer word stands (convention).</summary>
    private static readonly Duration Use = Duration.FromHours(12);

    /// <param name="make">Makes a reminder of a reason, an occasion, the moment and the end of its use.</param>
    public static IEnumerable<Reminder> For(Situation now, Person person, Func<ReminderReason, string, Instant, Instant, Reminder> make)
    {
        if (now.Stage.Stage is Stage.NothingDue or Stage.Recheck || !Concerns(now, person)) yield break;
        foreach (var spell in now.Silences.GroupBy(silence => silence.Since).OrderBy(spell => spell.Key))
        {
            var sources = spell.OrderBy(silence => silence.Source, StringComparer.Ordinal).ToList();
            var occasion = $"{string.Join('+', sources.Select(silence => silence.Source))} {spell.Key:uuuu-MM-dd'T'HH:mm:ss'Z'}";
            var silent = make(ReminderReason.FeedSilent, occasion, now.Now, now.Now + Use);
            if (sources.Any(silence => silence.Again is null)) yield return About(silent, sources);
            else if (now.SentAt.ContainsKey(silent.Key.ToString()))
            {
                var again = sources.Max(silence => silence.Again!.Value);
                yield return About(make(ReminderReason.FeedHeard, occasion, again, again + Use), sources);
            }
        }
    }

    /// <summary>The gardener, who must look elsewhere, and the keeper, who can mend it.</summary>
    private static bool Concerns(Situation now, Person person) => person.Role == PersonRole.Keeper || now.IsTold(person);

    private static Reminder About(Reminder reminder, IReadOnlyList<SourceSilence> sources) => reminder with { Brief = reminder.Brief with { Silences = sources } };
}
