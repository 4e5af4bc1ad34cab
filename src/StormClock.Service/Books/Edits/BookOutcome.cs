using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>What became of a change that somebody wants to make to one entry of a book.</summary>
/// <typeparam name="T">The sort of entry; the book itself for its line <c>garden</c>.</typeparam>
public abstract record BookOutcome<T>
    where T : class
{
    private BookOutcome()
    {
    }

    public sealed record Changed(GardenBook Book) : BookOutcome<T>;

    /// <summary>Somebody else has changed the entry meanwhile.</summary>
    /// <param name="Now">The entry as it is now; null when it has been removed.</param>
    public sealed record Conflict(T? Now) : BookOutcome<T>;

    /// <summary>It cannot be done, with the reasons and the mend.</summary>
    public sealed record Refused(IReadOnlyList<ReadFault> Faults) : BookOutcome<T>;
}
