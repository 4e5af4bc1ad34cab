namespace StormClock.Pages.Tests;

/// <summary>What a page is looked at with.</summary>
/// <param name="Width">CSS pixels.</param>
/// <param name="Height">CSS pixels.</param>
/// <param name="Scale">Device pixels to a CSS pixel.</param>
internal sealed record Screen(string Name, int Width, int Height, float Scale = 1)
{
    public bool HasScript { get; init; } = true;

    public bool HasTouch { get; init; }

    public BrowserNewContextOptions Options() => new()
    {
        ViewportSize = new() { Width = Width, Height = Height },
        DeviceScaleFactor = Scale,
        IsMobile = HasTouch,
        HasTouch = HasTouch,
        JavaScriptEnabled = HasScript,
        Locale = "en-US",
        TimezoneId = "Etc/UTC",
    };
}

/// <summary>The screens that pages must do on.</summary>
internal static class Screens
{
    public static readonly Screen Phone = new("phone", 360, 740, 2) { HasTouch = true };

    public static readonly Screen Desktop = new("desktop", 1280, 900);

    /// <summary>A desktop of 1280 by 900 at 200 % zoom (WCAG 2.2, 1.4.4).</summary>
    public static readonly Screen Zoomed = new("zoomed", 640, 450, 2);

    /// <summary>The narrowest that must do without scrolling sideways, which is a desktop at 400 % (WCAG 2.2, 1.4.10).</summary>
    public static readonly Screen Narrow = new("narrow", 320, 640, 2);

    /// <summary>For whoever has scripts turned off; nothing that is itself a script, such as axe, runs here.</summary>
    public static Screen NoScript { get; } = Phone with { Name = "phone without scripts", HasScript = false };

    /// <summary>The same page on another screen, as when somebody zooms in. It lasts as long as the page's context, whose end lets go of it.</summary>
    public static async Task ChangeAsync(IPage page, Screen screen)
    {
        var browser = await page.Context.NewCDPSessionAsync(page);
        await browser.SendAsync("Emulation.setDeviceMetricsOverride", new() { ["width"] = screen.Width, ["height"] = screen.Height, ["deviceScaleFactor"] = screen.Scale, ["mobile"] = screen.HasTouch });
        await page.WaitForFunctionAsync($"() => innerWidth === {screen.Width} && innerHeight === {screen.Height} && devicePixelRatio === {screen.Scale}");
    }
}
