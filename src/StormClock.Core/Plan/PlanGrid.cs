namespace StormClock.Core.Plan;

/// <summary>
/// The time from now to the horizon in slots of five minutes of work that begin on the clock's own fives. In great heat every third
/// slot takes ten minutes: a quarter of each hour is rest.
/// </summary>
internal sealed class PlanGrid
{
    public const int SlotMinutes = 5;
    private const long SlotSeconds = SlotMinutes * 60;

    /// <summary>Two weeks: nothing is forecast beyond, and tables stay small whatever horizon is asked for.</summary>
    private const int MostSlots = 14 * 24 * 60 / SlotMinutes;

    /// <summary>Three slots of work and one of rest.</summary>
    private const int HotRound = 4;

    /// <summary>Where each slot begins, and where the last one ends, in seconds.</summary>
    private readonly long[] begins;

    public PlanGrid(Instant now, Instant horizon, IReadOnlyList<Interval> hot)
    {
        var first = FiveAtOrAfter(now);
        var fives = new List<long>();
        for (var five = first; (five + 1) * SlotSeconds <= horizon.ToUnixTimeSeconds() && five < first + MostSlots; five++)
        {
            if (!IsRest(five, hot)) fives.Add(five);
        }

        var end = fives.Count == 0 ? first : fives[^1] + 1;
        begins = [.. fives.Append(end).Select(five => five * SlotSeconds)];
    }

    public int Slots => begins.Length - 1;

    public Instant At(int slot) => Instant.FromUnixTimeSeconds(begins[slot]);

    /// <summary>When so many minutes of work that begin with a slot end.</summary>
    public Instant EndOf(int slot, int minutes) => At(slot + ((minutes - 1) / SlotMinutes)) + Duration.FromMinutes(((minutes - 1) % SlotMinutes) + 1);

    /// <summary>The first slot that begins at or after an instant, within the grid.</summary>
    public int AtOrAfter(Instant at)
    {
        var found = Array.BinarySearch(begins, FiveAtOrAfter(at) * SlotSeconds);
        return Math.Min(found >= 0 ? found : ~found, Slots);
    }

    /// <summary>How many slots have ended by an instant, within the grid.</summary>
    public int EndedBy(Instant at)
    {
        var found = Array.BinarySearch(begins, at.ToUnixTimeSeconds());
        return Math.Max(found >= 0 ? found : ~found - 1, 0);
    }

    /// <summary>Slots that a stretch of minutes takes up, at least one.</summary>
    public static int Length(double minutes) => (int)Math.Clamp(Math.Ceiling(minutes / SlotMinutes), 1, MostSlots + 1);

    private static bool IsRest(long five, IReadOnlyList<Interval> hot) =>
        hot.Count > 0 && five % HotRound == HotRound - 1 && hot.Any(hours => hours.Contains(Instant.FromUnixTimeSeconds(five * SlotSeconds)));

    private static long FiveAtOrAfter(Instant at)
    {
        var five = at.ToUnixTimeSeconds() / SlotSeconds;
        return Instant.FromUnixTimeSeconds(five * SlotSeconds) >= at ? five : five + 1;
    }
}
