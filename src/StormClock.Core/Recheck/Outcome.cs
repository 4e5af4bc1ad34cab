using StormClock.Core.Garden;

namespace StormClock.Core.Recheck;

/// <summary>What became of a thing in a storm (product.md 2).</summary>
public enum OutcomeKind
{
    Held,
    Moved,
    Leaning,
    Damaged,
    Lost,

    /// <summary>What was to be done with it was not, so it says nothing of the work.</summary>
    NotDone,

    /// <summary>It would have fared better left alone.</summary>
    MadeWorse,
}

/// <summary>What one look after the wind found.</summary>
/// <param name="Note">In the looker's words; empty for none.</param>
/// <param name="Done">What had been done to it for the storm.</param>
/// <param name="Gust10MMps">Middle of the forecast's peak gusts at its site, 3 s at 10 m in the open, m/s; null where none was known.</param>
public sealed record Outcome(string ItemId, OutcomeKind Kind, Instant At, string By, string Note, IReadOnlyList<JobKind> Done, double? Gust10MMps);
