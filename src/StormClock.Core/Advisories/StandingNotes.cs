namespace StormClock.Core.Advisories;

/// <summary>Which notes of a garden still hold.</summary>
internal static class StandingNotes
{
    /// <summary>A leave-by time stays in force for a day after it: nobody comes back to work in between (C).</summary>
    private static readonly Duration LeaveByHolds = Duration.FromHours(24);

    /// <summary>Notes that no later all-clear note has withdrawn, and none of their kind has replaced.</summary>
    public static IEnumerable<Note> Of(IReadOnlyList<Note> made, Instant now)
    {
        var clear = made.OfType<AllClearNote>().Select(note => note.Made).DefaultIfEmpty(Instant.MinValue).Max();
        return made.Where(note => note.Made >= clear && Holds(note, now) && !made.Any(later => later.Replaces && later.Made > note.Made && later.GetType() == note.GetType()));
    }

    private static bool Holds(Note note, Instant now) => note switch
    {
        WindNote or RainNote or WaterNote => now < (note.Expires ?? note.Made + Note.UsualHolding),
        LeaveByNote leave => now < (leave.Expires ?? leave.LeaveBy + LeaveByHolds),
        _ => false,
    };
}
