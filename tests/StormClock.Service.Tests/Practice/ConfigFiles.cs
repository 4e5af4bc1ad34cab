namespace StormClock.Service.Tests.Practice;

/// <summary>Finds the files of <c>config/</c> from wherever the tests run.</summary>
internal static class ConfigFiles
{
    public static string Folder { get; } = Path.Combine(FindRoot(), "config");

    public static string[] PracticeGardens => Directory.GetFiles(Path.Combine(Folder, "practice"), "garden-*.yaml");

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "StormClock.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("StormClock.sln is in no folder above the tests.");
    }
}
