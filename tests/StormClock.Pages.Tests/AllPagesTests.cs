using StormClock.Pages.Tests.Checks;
using StormClock.Pages.Tests.Served;

namespace StormClock.Pages.Tests;

/// <summary>What every page must do, on every screen.</summary>
public class AllPagesTests(InstalledBrowser browser, Scenes scenes)
{
    public static TheoryData<string> Names { get; } = new(KnownPage.All.Select(page => page.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public Task Page_OnAPhone_HasNoFault(string name) => CheckAsync(KnownPage.Named(name), Screens.Phone);

    [Theory]
    [MemberData(nameof(Names))]
    public Task Page_OnADesktop_HasNoFault(string name) => CheckAsync(KnownPage.Named(name), Screens.Desktop);

    [Theory]
    [MemberData(nameof(Names))]
    public Task Page_ZoomedAndNarrow_NeedsNoScrollingSideways(string name) => browser.VisitAsync(Screens.Zoomed, async visit =>
    {
        await KnownPage.Named(name).OpenAsync(visit, scenes);
        await Layout.UnfoldAsync(visit.Page);
        await Layout.CheckWidthAsync(visit.Page);
        await visit.Page.SetViewportSizeAsync(Screens.Narrow.Width, Screens.Narrow.Height);
        await Layout.CheckWidthAsync(visit.Page);
    });

    private Task CheckAsync(KnownPage page, Screen screen) => browser.VisitAsync(screen, async visit =>
    {
        await page.OpenAsync(visit, scenes);
        Wire.Check(await visit.WireAsync());
        if (screen == Screens.Phone) await Pictures.KeepAsync(visit.Page, page.Picture);
        await Keyboard.WalkAsync(visit.Page);
        await Layout.UnfoldAsync(visit.Page);
        await Keyboard.WalkAsync(visit.Page);
        await Layout.CheckWidthAsync(visit.Page);
        await Layout.CheckTargetsAsync(visit.Page);
        await Axe.CheckAsync(visit.Page);
    });
}
