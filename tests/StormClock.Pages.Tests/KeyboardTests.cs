using StormClock.Core.Garden;
using StormClock.Pages.Tests.Checks;
using StormClock.Pages.Tests.Served;

namespace StormClock.Pages.Tests;

/// <summary>Work is marked with a keyboard alone.</summary>
public class KeyboardTests(InstalledBrowser browser)
{
    [Fact]
    public async Task FrontPage_JobMarkedThatThereIsNoTime_IsKeptWithTheReason()
    {
        await using var storm = await Scene.LastRound.PlayAsync();
        await browser.VisitAsync(Screens.Desktop, async visit =>
        {
            await visit.GoAsync(storm.At("/"));
            await Keyboard.FollowAsync(visit.Page, "Mark it:");
            await Keyboard.PressAsync(visit.Page, "Cannot", "Space");
            await Keyboard.FollowAsync(visit.Page, "No time");
            Assert.Contains("no time", await visit.Page.Locator(".said").InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        });

        var state = Assert.Single(storm.Answers("tern-hook"));
        Assert.Equal(CannotWhy.NoTime, state.Why);
    }
}
