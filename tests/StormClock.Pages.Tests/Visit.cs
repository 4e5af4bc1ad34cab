using System.Collections.Concurrent;
using StormClock.Pages.Tests.Checks;

namespace StormClock.Pages.Tests;

/// <summary>One page in a context of its own, with all that it complained of and all that came for it.</summary>
internal sealed class Visit
{
    public const float PatienceMs = 300_000;

    private readonly ConcurrentQueue<string> troubles = [];
    private readonly ConcurrentQueue<IRequest> finished = [];
    private Uri? expected;
    private int status;
    private bool refusalsAllowed;

    public Visit(IPage page)
    {
        Page = page;

        // On a machine that does much else all this takes long, and no test is of how long.
        page.SetDefaultTimeout(PatienceMs);
        page.Console += (_, said) =>
        {
            if (said.Type == "error" && !IsExpected(said)) troubles.Enqueue($"console: {said.Text} {said.Location}");
        };
        page.PageError += (_, fault) => troubles.Enqueue($"script: {fault}");
        page.RequestFailed += (_, request) => troubles.Enqueue($"failed: {request.Url} {request.Failure}");
        page.RequestFinished += (_, request) => finished.Enqueue(request);
    }

    public IPage Page { get; }

    /// <summary>Errors on the console (policy violations are such), uncaught faults of scripts, and requests that failed.</summary>
    public IReadOnlyCollection<string> Troubles => troubles;

    /// <summary>For forms that must be refused: an answer of 400 to 429 is no trouble from now on.</summary>
    public void AllowRefusals() => refusalsAllowed = true;

    /// <summary>Goes to an address and waits until everything has come.</summary>
    /// <param name="status">What it must answer with.</param>
    /// <param name="arrives">Path of the page that it must lead to; null for the very one. A page that sends its reader elsewhere, such as to signing in, has not been looked at.</param>
    public async Task GoAsync(Uri address, int status = 200, string? arrives = null)
    {
        finished.Clear();
        (expected, this.status) = (address, status);
        var answer = await Page.GotoAsync(address.AbsoluteUri, new() { WaitUntil = WaitUntilState.Load });
        Assert.Equal((arrives ?? address.AbsolutePath, status), (new Uri(Page.Url).AbsolutePath, answer!.Status));
    }

    /// <summary>Bytes that came over the wire since <see cref="GoAsync"/>.</summary>
    public Task<IReadOnlyList<WirePart>> WireAsync() => Wire.MeasureAsync(finished);

    /// <summary>The browser says on the console that a page answered with 404, also where it should.</summary>
    private bool IsExpected(IConsoleMessage said) =>
        (refusalsAllowed && said.Text.Contains("responded with a status of 4", StringComparison.Ordinal))
        || (status >= 400 && said.Location.StartsWith(expected!.AbsoluteUri, StringComparison.Ordinal) && said.Text.Contains($" {status} ", StringComparison.Ordinal));
}
