namespace StormClock.Core.Reminders;

/// <summary>Hours in which only urgent messages are delivered; they may run across midnight.</summary>
public sealed record QuietHours(LocalTime From, LocalTime To, DateTimeZone Zone)
{
    /// <summary>When the quiet hours end that an instant lies in; null when it lies in none.</summary>
    public Instant? EndAfter(Instant at)
    {
        var today = at.InZone(Zone).Date;
        foreach (var date in (LocalDate[])[today.PlusDays(-1), today])
        {
            var start = Zone.AtLeniently(date + From).ToInstant();
            var end = Zone.AtLeniently((To > From ? date : date.PlusDays(1)) + To).ToInstant();
            if (start <= at && at < end) return end;
        }

        return null;
    }
}
