using Deque.AxeCore.Commons;

namespace StormClock.Pages.Tests.Checks;

/// <summary>
/// Every rule that axe runs by default, its best practices among them. Run straight in the page, which has no frames: over a second page,
/// as axe's own wrapper does it, one look takes several times as long.
/// </summary>
internal static class Axe
{
    private const string Run =
        """
        async () => {
          if (document.querySelector('iframe, frame')) return ['a page with frames is not looked into'];
          const found = await axe.run(document, { resultTypes: ['violations'] });
          if (found.passes.length === 0) return ['axe looked at nothing'];
          return found.violations.map(rule => `${rule.id} (${rule.impact}): ${rule.help}\n` + rule.nodes.map(node => `  ${node.html}`).join('\n'));
        }
        """;

    private static readonly Lazy<string> Script = new(() => new BundledAxeScriptProvider().GetScript());

    public static async Task CheckAsync(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("() => !!window.axe")) await PutInAsync(page);
        var found = await page.EvaluateAsync<string[]>(Run);
        Assert.True(found.Length == 0, string.Join("\n\n", found));
    }

    /// <summary>Straight to the browser: a script of this size handed over as others are takes seconds.</summary>
    private static async Task PutInAsync(IPage page)
    {
        var browser = await page.Context.NewCDPSessionAsync(page);
        await browser.SendAsync("Runtime.evaluate", new() { ["expression"] = Script.Value + ";0" });
        await browser.DetachAsync();
    }
}
