using System.Text.RegularExpressions;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>A hundred mail scanners open every link of a storm's letters, and everything those pages name: nothing is answered for anybody.</summary>
public partial class ScannerTests(ITestOutputHelper output)
{
    private const int Scanners = 100;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Each in its own way, all at once.</summary>
    [Fact]
    public async Task Links_OpenedByAHundredScanners_ChangeNothing()
    {
        await using var service = await StormAsync();
        var links = Links(service);
        var before = State(service);

        var counts = await Task.WhenAll(Enumerable.Range(0, Scanners).Select(number => ScanAsync(service.Address, links, number)));

        output.WriteLine($"{Scanners} scanners, {links.Count} links, {counts.Sum()} requests");
        Assert.True(links.Count > 20);
        Assert.Equal(before, State(service));
    }

    /// <summary>In a real browser, which runs whatever script a page has and fetches what it names.</summary>
    [Fact(Explicit = true), Trait("Category", "Long")]
    public async Task Links_OpenedInABrowserAHundredTimes_ChangeNothing()
    {
        if (!Chromium.IsHere) Assert.Skip("needs chromium");
        await using var service = await StormAsync();
        var links = Links(service);
        var before = State(service);

        await using var browser = await Chromium.StartAsync();
        for (var scanner = 0; scanner < Scanners; scanner++)
        {
            var browserContextId = (await browser.AskAsync("Target.createBrowserContext", new { }))["browserContextId"]!.ToString();
            var target = await browser.AskAsync("Target.createTarget", new { url = "about:blank", browserContextId });
            var session = (await browser.AskAsync("Target.attachToTarget", new { targetId = target["targetId"]!.ToString(), flatten = true }))["sessionId"]!.ToString();
            foreach (var link in links)
            {
                var url = new Uri(service.Address, link).AbsoluteUri;
                await browser.AskAsync("Page.navigate", new { url }, session);

                // A calendar is taken down as a file; the page before it stays.
                if (link.EndsWith(".ics", StringComparison.Ordinal)) continue;
                for (var tries = 0; await browser.EvaluateAsync(session, "`${document.readyState} ${location.href}`") != $"complete {url}"; tries++) Assert.True(tries < 1000, url);
                Assert.NotEqual("", await browser.EvaluateAsync(session, "document.title"));
            }

            await browser.AskAsync("Target.disposeBrowserContext", new { browserContextId });
        }

        output.WriteLine($"{Scanners} browsers, {links.Count} links");
        Assert.Equal(before, State(service));
    }

    private static async Task<int> ScanAsync(Uri address, IReadOnlyList<string> links, int number)
    {
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = true, UseCookies = number % 2 == 0 }) { BaseAddress = address };
        var asked = 0;
        foreach (var link in links)
        {
            using var request = Request(link, number);
            using var answer = await client.SendAsync(request, Cancel);
            asked++;
            if (number % 10 != 0 || request.Method != HttpMethod.Get) continue;

            // Some open what the page names too: its style, its scripts, where its form goes.
            foreach (Match named in Named().Matches(await answer.Content.ReadAsStringAsync(Cancel)))
            {
                using var further = await client.GetAsync(new Uri(new Uri(address, link), named.Groups[1].Value), Cancel);
                asked++;
            }
        }

        return asked;
    }

    private static HttpRequestMessage Request(string link, int number)
    {
        HttpMethod[] methods = [HttpMethod.Get, HttpMethod.Head, HttpMethod.Options, HttpMethod.Get, HttpMethod.Get];
        var request = new HttpRequestMessage(methods[number % methods.Length], link);
        if (number % 5 == 3) request.Headers.Add("Sec-Purpose", "prefetch;prerender");
        if (number % 5 == 4) request.Headers.Add("Purpose", "prefetch");
        return request;
    }

    /// <summary>Two days of the practice storm, with links that phones can reach.</summary>
    private static async Task<VirtualService> StormAsync()
    {
        var service = await VirtualService.StartAsync(
            Instant.FromUtc(2027, 9, 20, 8, 10), new GardenShelf([PracticeStorm.Garden]), clock => [new ReplayFeed(PracticeStorm.Messages, clock)],
            new TestChannel("email", DeliveryResult.Delivered), Duration.FromMinutes(30), practice: true,
            change: plan => plan with { PagesAddress = new("https://garden.example"), LinksPerMinute = int.MaxValue });
        for (var i = 0; i < 8; i++) await service.AdvanceAsync(Duration.FromMinutes(30));
        return service;
    }

    private static List<string> Links(VirtualService service) =>
    [
        .. service.Outbox("tern-hook").Where(entry => entry.State == OutboxState.Sent)
            .SelectMany(entry => Link().Matches(entry.Message.Html + entry.Message.Text).Select(link => link.Groups[1].Value)).Distinct(),
    ];

    /// <summary>Everything that a press could change.</summary>
    private static string State(VirtualService service)
    {
        var outbox = service.Outbox("tern-hook");
        var states = outbox.Select(entry => entry.Key.Split('|')[1]).Distinct().SelectMany(episode => service.Store.Read(reader => JobStates.OfEpisode(reader, "tern-hook", episode)));
        var entries = outbox.Select(entry => $"{entry.Id} {entry.State} {entry.Attempts}");
        return string.Join('\n', [.. states.Select(state => state.ToString()), .. entries, .. service.Said.Where(said => said.Kind == "done").Select(said => said.ToString())]);
    }

    [GeneratedRegex(@"https://garden\.example(/[A-Za-z0-9_/.-]+)")]
    private static partial Regex Link();

    [GeneratedRegex("(?:href|src|action)=\"([^\"#]+)\"")]
    private static partial Regex Named();
}
