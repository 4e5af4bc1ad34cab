using StormClock.Core.Garden;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>Somebody who said "I am in" since the garden was closed.</summary>
public sealed record SaidIn(string PersonId, string Name, Instant At);

/// <summary>
/// The follow-up to "I am in": when somebody has not said so for an hour, those who can phone are told, once a closing. It asks
/// nobody to go out.
/// </summary>
internal static class InReminders
{
    /// <summary>From Garden closed until somebody not heard of is told to the others (C): time to put the tools away and look at a phone.</summary>
    public static readonly Duration Wait = Duration.FromMinutes(60);

    /// <summary>As long as the message that closed the garden (C).</summary>
    private static readonly Duration Use = Duration.FromHours(12);

    /// <param name="make">Makes a reminder of a reason, an occasion, the moment and the end of its use.</param>
    public static Reminder? For(Situation now, Person person, Func<ReminderReason, string, Instant, Instant, Reminder> make)
    {
        var at = now.Stage.Since + Wait;
        if (now.Stage.Stage != Stage.GardenClosed || now.Leave || now.Now < at || WindIsOver(now) || NotHeardOf(now, person).Count == 0) return null;
        var until = now.UnsafeUntil > now.Now ? Instant.Min(at + Use, now.UnsafeUntil.Value) : at + Use;
        return make(ReminderReason.NotIn, $"{now.Stage.Stage}-{now.Stage.Changes}", at, until);
    }

    /// <summary>Whose silence concerns a person: the gardener's the helpers (the keeper where there are none), everybody's the gardener.</summary>
    public static IReadOnlyList<Person> NotHeardOf(Situation now, Person reader) =>
        now.Reach.CanAnswer ? [.. now.Book.People.Where(other => other.Id != reader.Id && IsAsked(now, other) && !now.In.ContainsKey(other.Id) && Looks(now, reader, other))] : [];

    /// <summary>Who said to be in, in the order of the book.</summary>
    public static IReadOnlyList<SaidIn> Of(Situation now) =>
        [.. now.Book.People.Where(person => now.In.ContainsKey(person.Id)).Select(person => new SaidIn(person.Id, person.Name, now.In[person.Id]))];

    /// <summary>Works in the garden and has the message with the button.</summary>
    private static bool IsAsked(Situation now, Person person) => person.Role != PersonRole.Keeper && now.Reach.Of(person).Count > 0;

    private static bool Looks(Situation now, Person reader, Person other)
    {
        if (now.IsTold(reader)) return true;
        return other.Role == PersonRole.Gardener && (reader.Role == PersonRole.Helper || now.Book.People.All(person => person.Role != PersonRole.Helper));
    }

    private static bool WindIsOver(Situation now) => now.UnsafeUntil < now.Now;
}
