using System.Text.RegularExpressions;

namespace StormClock.Service.Rehearsal;

/// <summary>Where a rehearsal writes. What an earlier rehearsal left is replaced, unless this one goes on from it.</summary>
internal sealed partial class RehearsalFolders : IDisposable
{
    private readonly bool throwAway;

    public RehearsalFolders(RehearsalPlan plan)
    {
        throwAway = plan.DataFolder is null;
        Output = Directory.CreateDirectory(plan.OutputFolder).FullName;
        Data = throwAway ? Directory.CreateTempSubdirectory("stormclock-").FullName : Directory.CreateDirectory(plan.DataFolder!).FullName;
        if (throwAway) Clear();
    }

    public string Output { get; }

    public string Data { get; }

    public void Dispose()
    {
        if (throwAway) Directory.Delete(Data, recursive: true);
    }

    /// <summary>A file in a folder that would be replaced and was not written by a rehearsal; null when there is none.</summary>
    public static string? Foreign(string output)
    {
        if (!Directory.Exists(output)) return null;
        var log = Path.Combine(output, RehearsalLog.FileName);
        var hasLog = File.Exists(log);
        if (hasLog && File.ReadLines(log).FirstOrDefault() is { } first && !LogLine().IsMatch(first)) return log;
        return Replaced(output).FirstOrDefault(file => !hasLog || !LetterName().IsMatch(Path.GetFileName(file)));
    }

    private void Clear()
    {
        foreach (var file in Replaced(Output).Append(Path.Combine(Output, RehearsalLog.FileName))) File.Delete(file);
    }

    private static IEnumerable<string> Replaced(string output) => Directory.EnumerateFiles(output, "*.eml");

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2} [A-Z][a-z]{2} [0-9]{2}:[0-9]{2}  ")]
    private static partial Regex LogLine();

    [GeneratedRegex(@"^[0-9]{8}T[0-9]{6}Z-[0-9a-f]{32}\.eml$")]
    private static partial Regex LetterName();
}
