using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>
/// The weekly line to the keeper while nothing is due, in the storm season: that the box still listens. Where it stays out, something
/// is broken. It is the only message without an episode.
/// </summary>
internal static class ListeningReminders
{
    /// <summary>Stands in keys where an episode would.</summary>
    public const string Calm = "calm";

    /// <summary>Mondays at nine, when somebody may look into it (C).</summary>
    private static readonly LocalTime At = new(9, 0);
    private static readonly Duration Use = Duration.FromDays(2);

    public static IEnumerable<Reminder> For(Situation now)
    {
        foreach (var person in now.Book.People.Where(person => now.Reach.Weekly.Contains(person.Id) && person.Email is not null))
        {
            var monday = Monday(now.Now, now.Book.Zone);
            if (Moment(now.Book, monday) is not { } moment || moment > now.Now) continue;
            yield return new(
                new(now.Book.Id, Calm, person.Id, ReminderReason.Listening, $"{monday:uuuu-MM-dd}", Reach.Mail), person, moment, moment + Use, Urgent: false,
                Briefs.For(now, person, ReminderReason.Listening));
        }
    }

    /// <summary>When the next line is due; null at the end of the season.</summary>
    public static Instant? Next(Situation now) => Moment(now.Book, Monday(now.Now, now.Book.Zone).PlusWeeks(1));

    private static Instant? Moment(GardenBook book, LocalDate monday) =>
        StormSeason.Holds(book.Sites[0].At, monday) ? book.Zone.AtLeniently(monday + At).ToInstant() : null;

    private static LocalDate Monday(Instant now, DateTimeZone zone)
    {
        var today = now.InZone(zone).Date;
        return today.PlusDays(1 - (int)today.DayOfWeek);
    }
}
