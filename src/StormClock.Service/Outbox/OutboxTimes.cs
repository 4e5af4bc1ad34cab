namespace StormClock.Service.Outbox;

/// <summary>When an entry may be sent.</summary>
public static class OutboxTimes
{
    /// <summary>Earliest time of the next try.</summary>
    public static Instant DueAt(OutboxEntry entry) => Instant.Max(entry.Moment, entry.NextTry);

    /// <summary>When the dispatcher must look at it: to send it, or to expire it.</summary>
    public static Instant NeededAt(OutboxEntry entry) => Instant.Min(DueAt(entry), entry.UsefulUntil);

    /// <summary>Its time has come.</summary>
    public static bool IsDue(OutboxEntry entry, Instant now) => now >= DueAt(entry);

    /// <summary>Its time of use is over: it must not be sent any more.</summary>
    public static bool HasPassed(OutboxEntry entry, Instant now) => now >= entry.UsefulUntil;
}
