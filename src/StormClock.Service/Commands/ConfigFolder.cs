namespace StormClock.Service.Commands;

/// <summary>Where the files of the installation are: beside the reader, else beside the program.</summary>
internal static class ConfigFolder
{
    /// <summary>The folder given, else <c>config</c> in the current folder, else the one shipped with the program.</summary>
    public static string Find(string? given)
    {
        if (given is not null) return given;
        return Directory.Exists("config") ? "config" : Path.Combine(AppContext.BaseDirectory, "config");
    }

    /// <summary>The invented gardens and storm, shipped with the program.</summary>
    public static string Practice(string? given)
    {
        var beside = Path.Combine(Find(given), "practice");
        return Directory.Exists(beside) ? beside : Path.Combine(AppContext.BaseDirectory, "config", "practice");
    }
}
