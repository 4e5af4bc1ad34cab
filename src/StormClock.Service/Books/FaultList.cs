using StormClock.Core;

namespace StormClock.Service.Books;

/// <summary>Everything found wrong in one file and the files it names, told in order of lines.</summary>
/// <param name="file">Name of the file, where it is one that the file read names; null for the file read itself.</param>
internal sealed class FaultList(string? file = null)
{
    /// <summary>A file with more faults than this is not a garden book gone wrong but something else.</summary>
    private const int MostTold = 200;

    private readonly List<ReadFault> faults = [];

    public bool Any => faults.Count > 0;

    /// <summary>A place as messages name it, e.g. <c>line 4</c> or <c>line 4 of plants.csv</c>.</summary>
    public string Place(int line) => file is null ? $"line {line}" : $"line {line} of {file}";

    public void Add(int line, string reason) => faults.Add(ReadFault.At(Math.Max(1, line), reason) with { File = file });

    public void AddAll(IEnumerable<ReadFault> others) => faults.AddRange(others);

    public IReadOnlyList<ReadFault> InOrder()
    {
        var ordered = faults.Distinct().OrderBy(fault => fault.File, StringComparer.Ordinal).ThenBy(fault => fault.Line).ToList();
        if (ordered.Count <= MostTold) return ordered;

        var left = ordered.Count - MostTold;
        var next = ordered[MostTold];
        return [.. ordered.Take(MostTold), ReadFault.At(next.Line, $"{left} more faults from here on; mend the first ones and read again") with { File = next.File }];
    }
}
