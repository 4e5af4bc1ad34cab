namespace StormClock.Skill;

/// <summary>Where the real data lies: <c>../shared/data</c> beside the repository.</summary>
public static class SharedData
{
    /// <summary>Path of a file or folder below <c>../shared/data</c>; null when it is not there.</summary>
    public static string? Find(string name)
    {
        if (Repository() is not { } root) return null;
        var path = Path.GetFullPath(Path.Combine(root, "..", "shared", "data", name));
        return File.Exists(path) || Directory.Exists(path) ? path : null;
    }

    /// <summary>The same for a program that cannot go on without it.</summary>
    public static string Need(string name) =>
        Find(name) ?? throw new FileNotFoundException($"Needs ../shared/data/{name} beside the repository.");

    /// <summary>The folder that holds the solution, from where this program was built.</summary>
    public static string? Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "StormClock.sln"))) folder = folder.Parent;
        return folder?.FullName;
    }
}
