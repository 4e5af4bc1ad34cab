using StormClock.Core;

namespace StormClock.Service.Books;

internal static class FaultPlaces
{
    /// <summary>A fault as a person looks for it: file, line, and what is wrong.</summary>
    /// <param name="path">Of the file read; the fault may stand in another one beside it.</param>
    public static string ToldOf(this ReadFault fault, string path)
    {
        var file = fault.File is null ? path : Path.Combine(Path.GetDirectoryName(path) ?? "", fault.File);
        return fault.Line > 0 ? $"{file}:{fault.Line}: {fault.Reason}" : $"{file}: {fault.Where}: {fault.Reason}";
    }
}
