namespace StormClock.Service.Tests.Messages;

/// <summary>
/// Texts kept in the folder <c>Expected</c> of a room and compared whole. After a wanted change run the tests once with
/// <c>STORMCLOCK_WRITE_EXPECTED=1</c> in the environment, then read the difference before committing it.
/// </summary>
internal static class Golden
{
    private static bool Writes => Environment.GetEnvironmentVariable("STORMCLOCK_WRITE_EXPECTED") == "1";

    public static void Check(string file, string actual, string room = "Messages")
    {
        var path = Path.Combine(Folder(room), file);
        if (Writes) File.WriteAllText(path, actual);

        Assert.True(File.Exists(path), $"{file} is missing; {nameof(Golden)} says how to write it.");
        Assert.Equal(File.ReadAllText(path), actual);
    }

    private static string Folder(string room)
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "StormClock.sln"))) at = at.Parent!;

        return Path.Combine(at.FullName, "tests", "StormClock.Service.Tests", room, "Expected");
    }
}
