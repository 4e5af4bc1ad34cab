namespace StormClock.Service.Books;

/// <summary>Finds the word somebody most likely meant.</summary>
internal static class Nearest
{
    private const int LongestTried = 80;
    private const int MostListed = 100;
    private const int MostAlike = 4;
    private const int LeastPart = 3;

    /// <summary>The known word with the fewest slips of one letter, when they are few for its length; otherwise null.</summary>
    public static string? To(string written, IEnumerable<string> known)
    {
        if (written.Length > LongestTried) return null;

        var best = known.Where(word => Math.Abs(word.Length - written.Length) <= written.Length / 3 + 1)
            .Select(word => (Word: word, Slips: Slips(written.ToLowerInvariant(), word.ToLowerInvariant())))
            .OrderBy(pair => pair.Slips)
            .ThenBy(pair => pair.Word, StringComparer.Ordinal)
            .FirstOrDefault();
        return best.Word is not null && best.Slips <= Math.Max(1, Math.Min(written.Length, best.Word.Length) / 3) ? best.Word : null;
    }

    /// <summary>". Did you mean 'x'?" or the list of what is known, to end a sentence with.</summary>
    public static string Hint(string written, IReadOnlyCollection<string> known) =>
        To(written, known) is { } word ? $"did you mean '{word}'?" : Alike(written, known) is { Count: > 0 and <= MostAlike } alike ? $"did you mean {string.Join(" or ", alike.Select(one => $"'{one}'"))}?" : known.Count > MostListed ? "no known one is near it" : known.Count > 0 ? $"known here: {string.Join(", ", known)}" : "none is known yet";

    /// <summary>Known words of which a part begins with a part of what was written: <c>plant_pot</c> and <c>potted_plant</c>.</summary>
    private static List<string> Alike(string written, IEnumerable<string> known)
    {
        var parts = Parts(written).Where(part => part.Length >= LeastPart).ToList();
        return [.. known.Where(word => Parts(word).Any(part => parts.Exists(other => part.StartsWith(other, StringComparison.OrdinalIgnoreCase))))];
    }

    private static string[] Parts(string word) => word.Split(['_', '-', ' '], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Letters to insert, drop, change or swap with their neighbour (optimal string alignment distance).</summary>
    public static int Slips(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) cost[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) cost[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                cost[i, j] = Math.Min(change, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        }

        return cost[a.Length, b.Length];
    }
}
