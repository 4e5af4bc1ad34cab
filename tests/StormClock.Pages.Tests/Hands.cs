using StormClock.Pages.Tests.Checks;

namespace StormClock.Pages.Tests;

/// <summary>How somebody fills in and presses: by touch, or by keys alone. What is meant is said as a CSS selector.</summary>
internal abstract class Hands(IPage page)
{
    public IPage Page { get; } = page;

    public abstract Task FillAsync(string field, string text);

    /// <param name="value">Of the option.</param>
    public abstract Task ChooseAsync(string list, string value);

    /// <summary>Presses what leads to another page, or to the same one anew, and waits until that has come.</summary>
    public abstract Task PressAsync(string control);

    public Task<string> ReadAsync() => Page.Locator("body").InnerTextAsync();
}

/// <summary>By touch or a mouse.</summary>
internal sealed class Fingers(IPage page, bool hasScript) : Hands(page)
{
    public override Task FillAsync(string field, string text) => Page.Locator(field).FillAsync(text);

    public override Task ChooseAsync(string list, string value) => Page.Locator(list).SelectOptionAsync(value);

    public override Task PressAsync(string control) => hasScript
        ? Keyboard.LeaveByAsync(Page, () => Page.Locator(control).First.ClickAsync())
        : WithoutScriptAsync(() => Page.Locator(control).First.ClickAsync());

    private async Task WithoutScriptAsync(Func<Task> press)
    {
        await Page.RunAndWaitForResponseAsync(press, answer => answer.Request.IsNavigationRequest && answer.Status < 300);
        await Page.WaitForLoadStateAsync();
    }
}

/// <summary>By Tab, letters, Enter and nothing else.</summary>
internal sealed class Keys(IPage page) : Hands(page)
{
    public override async Task FillAsync(string field, string text)
    {
        await Keyboard.ReachFirstAsync(Page, field);
        await Page.Keyboard.PressAsync("Control+A");
        await Page.Keyboard.TypeAsync(text);
        Assert.Equal(text, await Page.Locator(field).InputValueAsync());
    }

    public override async Task ChooseAsync(string list, string value)
    {
        await Keyboard.ReachFirstAsync(Page, list);
        await Page.Keyboard.TypeAsync((await Page.Locator($"{list} option[value='{value}']").First.InnerTextAsync()).Trim());
        Assert.Equal(value, await Page.Locator(list).InputValueAsync());
    }

    public override Task PressAsync(string control) => Keyboard.LeaveByAsync(Page, async () =>
    {
        await Keyboard.ReachFirstAsync(Page, control);
        await Page.Keyboard.PressAsync("Enter");
    });
}
