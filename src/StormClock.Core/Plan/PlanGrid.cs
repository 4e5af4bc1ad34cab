namespace StormClock.Core.Plan;

/// <summary>The time from now to the horizon in slots of five minutes that begin on the clock's own fives.</summary>
internal sealed class PlanGrid
{
    public const int SlotMinutes = 5;
    private const long SlotSeconds = SlotMinutes * 60;

    private readonly long first;

    public PlanGrid(Instant now, Instant horizon)
    {
        first = Up(now.ToUnixTimeSeconds(), SlotSeconds);
        Slots = (int)Math.Clamp((horizon.ToUnixTimeSeconds() - (first * SlotSeconds)) / SlotSeconds, 0, MostSlots);
    }

    /// <summary>Two weeks: nothing is forecast beyond, and tables stay small whatever horizon is asked for.</summary>
    private const int MostSlots = 14 * 24 * 60 / SlotMinutes;

    public int Slots { get; }

    public Instant At(int slot) => Instant.FromUnixTimeSeconds((first + slot) * SlotSeconds);

    /// <summary>The first slot that begins at or after an instant, within the grid.</summary>
    public int AtOrAfter(Instant at) => (int)Math.Clamp(Up(at.ToUnixTimeSeconds(), SlotSeconds) - first, 0, Slots);

    /// <summary>How many slots have ended by an instant, within the grid.</summary>
    public int EndedBy(Instant at) => (int)Math.Clamp(Down(at.ToUnixTimeSeconds(), SlotSeconds) - first, 0, Slots);

    /// <summary>Slots that a stretch of minutes takes up, at least one.</summary>
    public static int Length(double minutes) => (int)Math.Clamp(Math.Ceiling(minutes / SlotMinutes), 1, MostSlots + 1);

    private static long Down(long seconds, long step) => (seconds - (((seconds % step) + step) % step)) / step;

    private static long Up(long seconds, long step) => -Down(-seconds, step);
}
