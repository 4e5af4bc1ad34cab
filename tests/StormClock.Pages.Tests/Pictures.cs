using StormClock.Service.Tests.Practice;

namespace StormClock.Pages.Tests;

/// <summary>Pictures of pages for <c>docs/pages/</c>: written with <c>STORMCLOCK_WRITE_SCREENS=1</c> in the environment, and never otherwise.</summary>
internal static class Pictures
{
    private static bool Writes => Environment.GetEnvironmentVariable("STORMCLOCK_WRITE_SCREENS") == "1";

    /// <param name="name">Null for a page of which none is kept.</param>
    public static async Task KeepAsync(IPage page, string? name)
    {
        if (!Writes || name is null) return;
        var folder = Directory.CreateDirectory(Path.Combine(ConfigFiles.Folder, "..", "docs", "pages")).FullName;
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png"), Scale = ScreenshotScale.Css });
    }
}
