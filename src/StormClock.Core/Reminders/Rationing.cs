namespace StormClock.Core.Reminders;

/// <summary>
/// Keeps messages few: what is not urgent waits for the end of the quiet hours, and nobody gets more than six a day. Orders, a closed garden, people not heard of
/// and late work are never held back, nor counted (product.md 6).
/// </summary>
public static class Rationing
{
    /// <summary>Messages a day and person; orders, Garden closed and late work apart.</summary>
    public const int MostADay = 6;

    private static readonly Duration Day = Duration.FromHours(24);
    private static readonly Duration Week = Duration.FromDays(7);

    /// <param name="wanted">Of one person, the weightiest first.</param>
    /// <param name="sentAt">When each message was sent, by key.</param>
    public static IEnumerable<Reminder> Of(IEnumerable<Reminder> wanted, QuietHours? quiet, IReadOnlyDictionary<string, Instant> sentAt, Instant now)
    {
        var left = (int?)null;
        foreach (var reminder in wanted)
        {
            if (reminder.Urgent || sentAt.ContainsKey(reminder.Key.ToString()))
            {
                yield return reminder;
                continue;
            }

            left ??= MostADay - sentAt.Count(sent => now - sent.Value < Day && Counts(sent.Key, reminder.Key));
            if (left <= 0) continue;
            left--;
            if (Held(reminder, quiet, now) is { } held) yield return held;
        }
    }

    /// <summary>Without an episode: one a week and person, by whatever channel.</summary>
    /// <param name="wanted">Of anybody.</param>
    public static IEnumerable<Reminder> OneAWeek(IEnumerable<Reminder> wanted, QuietHours? quiet, IReadOnlyDictionary<string, Instant> sentAt, Instant now) =>
        wanted
            .Where(reminder => !sentAt.Any(sent => now - sent.Value < Week && sent.Key != reminder.Key.ToString() && IsTo(sent.Key, reminder.Key)))
            .Select(reminder => Held(reminder, quiet, now))
            .OfType<Reminder>();

    /// <summary>Waits for the end of the quiet hours; null when it is of no more use then.</summary>
    private static Reminder? Held(Reminder reminder, QuietHours? quiet, Instant now)
    {
        var held = quiet?.EndAfter(Instant.Max(reminder.Moment, now)) is { } end ? reminder with { Moment = end } : reminder;
        return held.Moment < held.UsefulUntil ? held : null;
    }

    private static bool IsTo(string sentKey, ReminderKey key) => sentKey.StartsWith($"{key.GardenId}|{key.EpisodeId}|{key.PersonId}|", StringComparison.Ordinal);

    /// <summary>Reasons that are counted apart: an order given or taken back, people not heard of, late work.</summary>
    private static readonly HashSet<string> Apart = [nameof(ReminderReason.Leave), nameof(ReminderReason.OrderLifted), nameof(ReminderReason.NotIn), nameof(ReminderReason.Late)];

    /// <summary>A message to the same person by the same channel that counts: all but those apart and those that close the garden.</summary>
    private static bool Counts(string sentKey, ReminderKey key)
    {
        var parts = sentKey.Split('|');
        return parts.Length == 6 && parts[2] == key.PersonId && parts[5] == key.Channel && !Apart.Contains(parts[3]) && !parts[4].StartsWith($"{Stages.Stage.GardenClosed}-", StringComparison.Ordinal);
    }
}
