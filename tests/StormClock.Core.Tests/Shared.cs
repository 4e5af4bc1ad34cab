namespace StormClock.Core.Tests;

/// <summary>Finds the real test data that lies beside the repository, and skips the test where it is missing.</summary>
internal static class Shared
{
    /// <summary>A folder below <c>../shared/data</c>, e.g. <c>nhc-tcm</c>.</summary>
    public static string Folder(string name)
    {
        var folder = FindFolder(name);
        if (folder is null) Assert.Skip("needs ../shared");
        return folder;
    }

    /// <summary>The same, null where it is missing.</summary>
    public static string? FindFolder(string name)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "StormClock.sln"))) root = root.Parent;

        var folder = root is null ? null : Path.Combine(root.FullName, "..", "shared", "data", name);
        return folder is null || !Directory.Exists(folder) ? null : Path.GetFullPath(folder);
    }

    /// <summary>All files of a folder below <c>../shared/data</c> and of those under it, in order of name.</summary>
    public static IReadOnlyList<string> Files(string name, string pattern = "*") =>
        [.. Directory.EnumerateFiles(Folder(name), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
}
