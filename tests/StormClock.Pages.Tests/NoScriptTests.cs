using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Pages.Tests.Served;

namespace StormClock.Pages.Tests;

/// <summary>Whoever has scripts turned off can do all that is done by pages; only notifications need one, and say so.</summary>
public class NoScriptTests(InstalledBrowser browser, Scenes scenes)
{
    [Fact]
    public async Task Job_ReportedDone_IsKeptAndSaid()
    {
        await using var storm = await Scene.LastRoundForPhones.PlayAsync();
        await browser.VisitAsync(Screens.NoScript, async visit =>
        {
            await visit.GoAsync(storm.At(Links.Of(storm, AckPurpose.Job)));
            Assert.Equal(0, await visit.Page.Locator(".said").CountAsync());
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
            await visit.Page.Locator(".said").WaitForAsync();
        });

        var state = Assert.Single(storm.Answers("tern-hook"));
        Assert.Equal(JobProgress.Done, state.Progress);
    }

    [Fact]
    public Task Notifications_WithoutScripts_SayThatTheyNeedOne() => browser.VisitAsync(Screens.NoScript, async visit =>
    {
        var storm = await scenes.PlayAsync(Scene.WorkForPhones);
        await visit.GoAsync(storm.At(Links.ForPush(storm, "gardener")));
        Assert.True(await visit.Page.Locator("noscript p").IsVisibleAsync());
    });

    [Fact]
    public Task FrontPage_MessagesAndWords_UnfoldWithoutScripts() => browser.VisitAsync(Screens.NoScript, async visit =>
    {
        var storm = await scenes.PlayAsync(Scene.Work);
        await visit.GoAsync(storm.At("/"));
        var letter = visit.Page.Locator("main > details").First;
        Assert.False(await letter.Locator("pre").IsVisibleAsync());
        await letter.Locator("summary").ClickAsync();
        Assert.True(await letter.Locator("pre").IsVisibleAsync());
    });
}
