namespace StormClock.Pages.Tests;

/// <summary>Finds a browser of the Chromium family on this machine. Nothing is fetched.</summary>
internal static class BrowserProgram
{
    private const string Variable = "STORMCLOCK_BROWSER";
    private const string Required = "required";

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge", "msedge"];

    /// <summary>Where no PATH leads.</summary>
    private static readonly string[] Places =
    [
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        @"C:\Program Files\Google\Chrome\Application\chrome.exe",
        @"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
    ];

    /// <summary>Said where none is found.</summary>
    public const string Missing =
        $"needs a browser: install Chromium (Debian: apt install chromium; Fedora: dnf install chromium; macOS: brew install --cask chromium) or set {Variable} to the program's path; {Variable}={Required} makes its lack a failure";

    /// <summary>Whoever names a program, or asks for one, does not want the tests to be left out.</summary>
    public static bool IsRequired => Setting is { Length: > 0 };

    private static string? Setting => Environment.GetEnvironmentVariable(Variable);

    /// <summary>Path of the program; null where there is none.</summary>
    public static string? Find() => Setting is { Length: > 0 } named && named != Required
        ? OnPath(named)
        : Names.Select(OnPath).OfType<string>().FirstOrDefault() ?? Places.FirstOrDefault(File.Exists);

    /// <summary>A path as it is; a bare name from the folders of PATH.</summary>
    private static string? OnPath(string name)
    {
        if (Path.IsPathRooted(name)) return File.Exists(name) ? name : null;
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        string[] endings = OperatingSystem.IsWindows() ? [".exe"] : [""];
        return folders.SelectMany(folder => endings.Select(ending => Path.Combine(folder, name + ending))).FirstOrDefault(File.Exists);
    }
}
