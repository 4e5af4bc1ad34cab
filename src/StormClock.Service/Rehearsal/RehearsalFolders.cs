namespace StormClock.Service.Rehearsal;

/// <summary>Where a rehearsal writes. What an earlier rehearsal left is replaced, unless this one goes on from it.</summary>
internal sealed class RehearsalFolders : IDisposable
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

    /// <summary>Only files of the kinds that a rehearsal writes are taken away.</summary>
    private void Clear()
    {
        foreach (var file in Directory.EnumerateFiles(Output, "*.eml").Append(Path.Combine(Output, RehearsalLog.FileName))) File.Delete(file);
    }
}
