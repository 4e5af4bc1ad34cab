using StormClock.Core;

namespace StormClock.Service.Books.Edits;

/// <summary>What became of a change to the file of a book.</summary>
/// <typeparam name="T">The sort of entry that was to be changed.</typeparam>
public abstract record BookSave<T>
    where T : class
{
    private BookSave()
    {
    }

    /// <param name="Rewrite">What the file says now, and how much of it was written.</param>
    /// <param name="OldFile">Where the file as it was is kept; null where nothing that somebody wrote by hand went with the change.</param>
    public sealed record Saved(BookRewrite Rewrite, string? OldFile) : BookSave<T>;

    /// <summary>Nothing was written, since somebody else has changed the entry meanwhile.</summary>
    /// <param name="Now">The entry as it is now; null when it has been removed.</param>
    public sealed record Conflict(T? Now) : BookSave<T>;

    /// <summary>Nothing was written, since the change cannot be made or the file cannot be written.</summary>
    public sealed record Refused(IReadOnlyList<ReadFault> Faults) : BookSave<T>;

    /// <summary>Nothing was written, since the file as it is now cannot be read.</summary>
    /// <param name="Faults">With the lines of the file.</param>
    public sealed record Broken(IReadOnlyList<ReadFault> Faults) : BookSave<T>;
}
