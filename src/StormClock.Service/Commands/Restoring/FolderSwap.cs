using StormClock.Service.Store;

namespace StormClock.Service.Commands.Restoring;

/// <summary>
/// One folder that takes the place of another, which is kept beside it. Both are whole at every moment: each step gives a whole folder another name, so
/// that whatever ends the program in between loses nothing.
/// </summary>
/// <param name="Place">Full path of the folder that is restored.</param>
/// <param name="Fresh">Beside it, with what is to take its place.</param>
/// <param name="Old">Beside it, where what was there is kept.</param>
internal sealed record FolderSwap(string Place, string Fresh, string Old)
{
    /// <param name="stamp">The time, as in names of files; a number follows it where something has that name already.</param>
    public static FolderSwap At(string folder, string stamp)
    {
        var place = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        return Enumerable.Range(1, int.MaxValue)
            .Select(number => number == 1 ? stamp : $"{stamp}-{number}")
            .Select(name => new FolderSwap(place, $"{place}.restoring-{name}", $"{place}.before-{name}"))
            .First(swap => !Path.Exists(swap.Fresh) && !Path.Exists(swap.Old));
    }

    /// <summary>Whoever moved the one would move the other with it.</summary>
    public static bool AreNested(FolderSwap one, FolderSwap other) => Holds(one.Place, other.Place) || Holds(other.Place, one.Place);

    private static bool Holds(string outer, string inner) => (inner + Path.DirectorySeparatorChar).StartsWith(outer + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>Something is there to be kept.</summary>
    public bool KeepsOld => Directory.Exists(Place);

    /// <summary>What gets another name, in this order.</summary>
    public IEnumerable<(string From, string To)> Steps => KeepsOld ? [(Place, Old), (Fresh, Place)] : [(Fresh, Place)];

    /// <summary>All swaps, or none where the system refuses one; then it throws what the system says.</summary>
    public static void Do(IReadOnlyList<FolderSwap> swaps)
    {
        var done = new Stack<(string From, string To)>();
        try
        {
            foreach (var step in swaps.SelectMany(swap => swap.Steps).ToList())
            {
                Rename(step.From, step.To);
                done.Push(step);
            }
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            foreach (var (from, to) in done) Rename(to, from);
            throw;
        }
    }

    /// <summary>Durable when it returns.</summary>
    public static void Rename(string from, string to)
    {
        Directory.Move(from, to);
        FolderSync.Now(Path.GetDirectoryName(to)!);
    }

    /// <summary>Folders of a restore that was broken off, which hold nothing but what came out of an archive.</summary>
    public IReadOnlyList<string> LeftOver() => Path.GetDirectoryName(Place) is { } parent && Directory.Exists(parent)
        ? [.. Directory.EnumerateDirectories(parent, $"{Path.GetFileName(Place)}.restoring-*").Where(folder => folder != Fresh).Order(StringComparer.Ordinal)]
        : [];
}
