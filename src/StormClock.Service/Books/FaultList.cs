using StormClock.Core;

namespace StormClock.Service.Books;

/// <summary>Everything found wrong in one file, told in order of lines.</summary>
internal sealed class FaultList
{
    /// <summary>A file with more faults than this is not a garden book gone wrong but something else.</summary>
    private const int MostTold = 200;

    private readonly List<ReadFault> faults = [];

    public bool Any => faults.Count > 0;

    public void Add(int line, string reason) => faults.Add(ReadFault.At(Math.Max(1, line), reason));

    public IReadOnlyList<ReadFault> InOrder()
    {
        var ordered = faults.Distinct().OrderBy(fault => fault.Line).ToList();
        if (ordered.Count <= MostTold) return ordered;

        var left = ordered.Count - MostTold;
        return [.. ordered.Take(MostTold), ReadFault.At(ordered[MostTold].Line, $"{left} more faults from here on; mend the first ones and read again")];
    }
}
