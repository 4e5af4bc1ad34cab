namespace StormClock.Pages.Tests.Checks;

/// <summary>Nothing runs off the screen, and whatever is pressed is large enough for a thumb.</summary>
internal static class Layout
{
    /// <summary>
    /// The page, boxes that cut off what is in them, things that stick out at a side, and words cut off by their picture's
    /// edge. What is wholly off screen on purpose, such as a link that appears when it is reached, is no fault; nor is a drawing
    /// to press on that scrolls in a box of its own, whose sides both matter (WCAG 2.2, 1.4.10).
    /// </summary>
    private const string Overflowing =
        """
        () => {
          const found = [], root = document.documentElement, width = root.clientWidth;
          const name = e => `${e.tagName.toLowerCase()}${e.className && e.className.baseVal === undefined ? '.' + e.className : ''} "${(e.textContent || '').trim().slice(0, 40)}"`;
          if (root.scrollWidth > width) found.push(`the page is ${root.scrollWidth} px wide on a screen of ${width} px`);
          for (const e of document.body.querySelectorAll('*')) {
            const box = e.getBoundingClientRect(), style = getComputedStyle(e);
            if (box.width <= 1 || box.height <= 1 || style.visibility !== 'visible') continue;
            const scroller = e.closest('.plot'), drawn = e.matches('input[type=image]') || e.querySelector('input[type=image]');
            if (drawn && scroller && scroller !== e && ['auto', 'scroll'].includes(getComputedStyle(scroller).overflowX)) continue;
            if (box.right > width + 0.5 && box.left < width || box.left < -0.5 && box.right > 0) found.push(`${name(e)} sticks out: ${Math.round(box.left)} to ${Math.round(box.right)} px`);
            const cuts = ['hidden', 'clip'].includes(style.overflowX) && !(e instanceof SVGElement);
            if (cuts && e.scrollWidth > e.clientWidth + 1) found.push(`${name(e)} is cut off`);
          }
          for (const word of document.querySelectorAll('svg text')) {
            const box = word.getBoundingClientRect(), edge = word.ownerSVGElement.getBoundingClientRect();
            if (edge.width > 0 && (box.left < edge.left - 1 || box.right > edge.right + 1 || box.top < edge.top - 1 || box.bottom > edge.bottom + 1)) found.push(`${name(word)} is cut off by its picture`);
          }
          return found;
        }
        """;

    /// <summary>Buttons, fields, what opens and closes, and links that are no part of a sentence. A box to tick counts with its label.</summary>
    private const string Small =
        """
        least => {
          const found = [];
          const standsAlone = a => {
            if (getComputedStyle(a).display !== 'inline') return true;
            let block = a.parentElement;
            while (getComputedStyle(block).display === 'inline') block = block.parentElement;
            return block.textContent.trim() === a.textContent.trim();
          };
          for (const e of document.querySelectorAll('button, summary, select, textarea, input:not([type=hidden]), a[href], [role=button]')) {
            let box = e.getBoundingClientRect();
            if (box.width <= 1 || box.height <= 1) continue;
            if (e.matches('a') && !standsAlone(e)) continue;
            if (e.matches('[type=checkbox], [type=radio]') && e.labels.length > 0) box = e.labels[0].getBoundingClientRect();
            if (box.height < least - 0.5) found.push(`${e.tagName.toLowerCase()} "${(e.textContent || e.name || '').trim().slice(0, 40)}" is ${Math.round(box.height)} px high`);
          }
          return found;
        }
        """;

    /// <summary>CSS pixels.</summary>
    private const int LeastHeight = 44;

    public static async Task CheckWidthAsync(IPage page)
    {
        var found = await page.EvaluateAsync<string[]>(Overflowing);
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    public static async Task CheckTargetsAsync(IPage page)
    {
        var found = await page.EvaluateAsync<string[]>(Small, LeastHeight);
        Assert.True(found.Length == 0, $"at least {LeastHeight} px are wanted:\n{string.Join('\n', found)}");
    }

    /// <summary>What is folded away is looked at too.</summary>
    public static Task UnfoldAsync(IPage page) => page.EvaluateAsync("() => document.querySelectorAll('details').forEach(fold => fold.open = true)");
}
