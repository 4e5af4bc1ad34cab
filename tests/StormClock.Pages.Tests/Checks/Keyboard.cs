namespace StormClock.Pages.Tests.Checks;

/// <summary>Whoever has no pointer goes by Tab alone.</summary>
internal static class Keyboard
{
    /// <summary>
    /// Numbers whatever Tab should reach, in the order of the document: what can be seen and is not switched off. Of a group
    /// of radio buttons that is the chosen one, else the first.
    /// </summary>
    private const string Number =
        """
        () => {
          const wanted = [];
          const seen = e => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0;
          const stop = e => {
            if (e.matches(':disabled') || e.tabIndex < 0 && e.tagName !== 'SUMMARY') return false;
            if (e.tagName === 'SUMMARY') return e.parentElement.tagName === 'DETAILS' && e.parentElement.querySelector(':scope > summary') === e;
            if (e.type !== 'radio') return true;
            const group = [...document.querySelectorAll('input[type=radio]')].filter(o => o.name === e.name && o.form === e.form && !o.disabled);
            return (group.find(o => o.checked) || group[0]) === e;
          };
          document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]').forEach(e => { if (seen(e) && stop(e)) wanted.push(e); });
          window.tabStops = wanted;
          return wanted.map(e => `${e.tagName.toLowerCase()} "${(e.getAttribute('aria-label') || e.textContent || e.name || '').trim().slice(0, 60)}"`);
        }
        """;

    /// <summary>The number of what has the focus (-1: nothing, -2: something else), and 1 where it can be seen that it has.</summary>
    private const string Here =
        """
        () => {
          const e = document.activeElement;
          if (!e || e === document.body || e === document.documentElement) return [-1, 1];
          const style = getComputedStyle(e), box = e.getBoundingClientRect(), number = window.tabStops.indexOf(e);
          const seen = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0 && box.width > 1 && box.height > 1 && box.bottom > 0 && box.top < innerHeight;
          return [number < 0 ? -2 : number, seen ? 1 : 0];
        }
        """;

    private const string NameHere = "() => { const e = document.activeElement; return !e || e === document.body ? '' : (e.getAttribute('aria-label') || e.labels?.[0]?.textContent || e.textContent || e.name || '').trim(); }";

    /// <summary>From the top to the end by Tab: every control in the document's order, each seen to have the focus, and out at the end.</summary>
    public static async Task WalkAsync(IPage page)
    {
        await page.EvaluateAsync("() => { document.activeElement?.blur(); scrollTo(0, 0); }");
        var stops = await page.EvaluateAsync<string[]>(Number);
        for (var i = 0; i < stops.Length; i++)
        {
            var (at, seen) = await TabAsync(page);
            Assert.True(at == i, $"Tab should have reached {stops[i]} and reached {Named(stops, at)}");
            Assert.True(seen, $"nobody sees that {stops[i]} has the focus");
        }

        var (after, _) = await TabAsync(page);
        Assert.True(after is -1 or 0, $"Tab after the last control should leave the page and reached {Named(stops, after)}");
    }

    /// <summary>Goes on by Tab to a control of this name, and presses it.</summary>
    /// <param name="name">Its label, or how it begins.</param>
    /// <param name="key"><c>Enter</c>, or <c>Space</c> for what is ticked.</param>
    public static async Task PressAsync(IPage page, string name, string key = "Enter")
    {
        await ReachAsync(page, name);
        await page.Keyboard.PressAsync(key);
    }

    /// <summary>The same with a control that leads to another page, or to the same one anew, and waits until that has come.</summary>
    public static Task FollowAsync(IPage page, string name) => LeaveByAsync(page, () => PressAsync(page, name));

    /// <summary>Does what leads to another page, or to the same one anew, and waits until that has come.</summary>
    public static async Task LeaveByAsync(IPage page, Func<Task> press)
    {
        await page.EvaluateAsync("() => { window.left = true; }");
        await press();
        await page.WaitForFunctionAsync("() => !window.left && document.readyState === 'complete'");
    }

    /// <summary>Goes on by Tab to the first control that a selector means.</summary>
    public static async Task ReachFirstAsync(IPage page, string selector)
    {
        var most = (await page.EvaluateAsync<string[]>(Number)).Length + 1;
        for (var i = 0; i <= most; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("selector => document.activeElement === document.querySelector(selector)", selector)) return;
        }

        Assert.Fail($"Tab does not reach {selector} on {page.Url}");
    }

    /// <inheritdoc cref="PressAsync"/>
    public static async Task ReachAsync(IPage page, string name)
    {
        var passed = new List<string>();
        var most = (await page.EvaluateAsync<string[]>(Number)).Length + 1;
        for (var i = 0; i <= most; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            var here = await page.EvaluateAsync<string>(NameHere);
            if (here.StartsWith(name, StringComparison.Ordinal)) return;
            passed.Add(here);
        }

        Assert.Fail($"Tab does not reach \"{name}\"; it reached: {string.Join(", ", passed)}");
    }

    private static async Task<(int At, bool Seen)> TabAsync(IPage page)
    {
        await page.Keyboard.PressAsync("Tab");
        var here = await page.EvaluateAsync<int[]>(Here);
        return (here[0], here[1] == 1);
    }

    private static string Named(string[] stops, int at) => at switch { -1 => "nothing", < 0 => "something that is no control", _ => stops[at] };
}
