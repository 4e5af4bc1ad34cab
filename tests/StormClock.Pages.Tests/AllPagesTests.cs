using StormClock.Pages.Tests.Checks;
using StormClock.Pages.Tests.Served;
using Xunit.Sdk;

namespace StormClock.Pages.Tests;

/// <summary>What every page must do, on every screen.</summary>
public class AllPagesTests(InstalledBrowser browser, Scenes scenes)
{
    public static TheoryData<string> Names { get; } = new(KnownPage.All.Select(page => page.Name));

    /// <summary>One visit, in which the screen changes: most of what a look costs is the browser's opening.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public Task Page_OnEveryScreen_HasNoFault(string name) => browser.VisitAsync(Screens.Phone, async visit =>
    {
        var known = KnownPage.Named(name);
        await known.OpenAsync(visit, scenes);
        Wire.Check(await visit.WireAsync());
        await Pictures.KeepAsync(visit.Page, known.Picture);
        await Keyboard.WalkAsync(visit.Page);
        await Layout.UnfoldAsync(visit.Page);
        await On(Screens.Phone, () => LookAsync(visit.Page));
        await On(Screens.Desktop, () => Keyboard.WalkAsync(visit.Page));
        await On(Screens.Desktop, () => LookAsync(visit.Page));
        await On(Screens.Zoomed, () => Layout.CheckWidthAsync(visit.Page));
        await On(Screens.Narrow, () => Layout.CheckWidthAsync(visit.Page));

        async Task On(Screen screen, Func<Task> look)
        {
            await Screens.ChangeAsync(visit.Page, screen);
            try
            {
                await look();
            }
            catch (XunitException fault)
            {
                Assert.Fail($"{screen.Name}: {fault.Message}");
            }
        }
    });

    private static async Task LookAsync(IPage page)
    {
        await Layout.CheckWidthAsync(page);
        await Layout.CheckTargetsAsync(page);
        await Axe.CheckAsync(page);
    }
}
