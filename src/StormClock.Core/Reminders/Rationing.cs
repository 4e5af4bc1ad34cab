namespace StormClock.Core.Reminders;

/// <summary>
/// Keeps messages few: what is not urgent waits for the end of the quiet hours, and nobody gets more than six a day. Orders, a closed garden and late
/// work are never held back (product.md 6).
/// </summary>
public static class Rationing
{
    /// <summary>Messages a day and person, orders and Garden closed apart.</summary>
    public const int MostADay = 6;

    private static readonly Duration Day = Duration.FromHours(24);

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
            var held = quiet?.EndAfter(Instant.Max(reminder.Moment, now)) is { } end ? reminder with { Moment = end } : reminder;
            if (held.Moment < held.UsefulUntil) yield return held;
        }
    }

    /// <summary>A message to the same person by the same channel that counts: all but those that tell of an order in force or a closed garden.</summary>
    private static bool Counts(string sentKey, ReminderKey key)
    {
        var parts = sentKey.Split('|');
        return parts.Length == 6 && parts[2] == key.PersonId && parts[5] == key.Channel && parts[3] != nameof(ReminderReason.Leave) && !parts[4].StartsWith("GardenClosed", StringComparison.Ordinal);
    }
}
