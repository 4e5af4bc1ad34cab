using StormClock.Pages.Tests;

[assembly: AssemblyFixture(typeof(InstalledBrowser))]
[assembly: AssemblyFixture(typeof(StormClock.Pages.Tests.Served.Scenes))]

namespace StormClock.Pages.Tests;

/// <summary>
/// The one browser of a test run, started when the first test asks for it. Every visit has a context of its own: nothing of
/// one test is seen by another.
/// </summary>
public sealed class InstalledBrowser : IAsyncDisposable
{
    private static readonly string[] Arguments = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"];

    private readonly SemaphoreSlim starting = new(1);
    private IPlaywright? driver;
    private IBrowser? browser;
    private string? reason;

    /// <summary>
    /// Opens an empty page, hands it over, and afterwards holds the page to have been quiet: an error on the console, a refused
    /// script or style, or an answer that failed is a fault of the page, whatever else was looked at.
    /// </summary>
    internal async Task VisitAsync(Screen screen, Func<Visit, Task> look)
    {
        await using var context = await (await StartedAsync()).NewContextAsync(screen.Options());
        var visit = new Visit(await context.NewPageAsync());
        await look(visit);
        Assert.True(visit.Troubles.Count == 0, $"the page was not quiet:\n{string.Join('\n', visit.Troubles)}");
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        driver?.Dispose();
        starting.Dispose();
    }

    private async Task<IBrowser> StartedAsync()
    {
        await starting.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            if (browser is null && reason is null) await StartAsync();
        }
        finally
        {
            starting.Release();
        }

        if (browser is not null) return browser;
        if (BrowserProgram.IsRequired) Assert.Fail(reason!);
        Assert.Skip(reason!);
        return null;
    }

    private async Task StartAsync()
    {
        if (BrowserProgram.Find() is not { } program)
        {
            reason = BrowserProgram.Missing;
            return;
        }

        driver = await Playwright.CreateAsync();
        try
        {
            browser = await driver.Chromium.LaunchAsync(new() { ExecutablePath = program, Headless = true, Args = Arguments, Timeout = Visit.PatienceMs });
        }
        catch (PlaywrightException fault)
        {
            reason = $"{program} does not start: {fault.Message}";
        }
    }
}
