using System.Text.Json.Nodes;
using StormClock.Service.Messages;

namespace StormClock.Service.Tests.Web;

/// <summary>
/// The page and its worker in a real browser, under the policy they are served with. Subscribing itself needs the browser
/// maker's push service, so the payload is handed to the worker over the debugging protocol.
/// </summary>
public class PushBrowserTests
{
    [Fact(Explicit = true), Trait("Category", "Long")]
    public async Task Worker_GivenAPayload_ShowsTheNotification()
    {
        if (!Chromium.IsHere) Assert.Skip("needs chromium");
        await using var host = await PushPagesHost.StartAsync();
        await using var browser = await Chromium.StartAsync();
        var origin = host.Client.BaseAddress!.GetLeftPart(UriPartial.Authority);
        var browserContextId = (await browser.AskAsync("Target.createBrowserContext", new { }))["browserContextId"]!.ToString();
        await browser.AskAsync("Browser.grantPermissions", new { permissions = new[] { "notifications" }, origin, browserContextId });
        var target = await browser.AskAsync("Target.createTarget", new { url = origin + PushPagesHost.Page, browserContextId });
        var session = (await browser.AskAsync("Target.attachToTarget", new { targetId = target["targetId"]!.ToString(), flatten = true }))["sessionId"]!.ToString();
        await browser.AskAsync("ServiceWorker.enable", new { }, session);
        for (var tries = 0; await browser.EvaluateAsync(session, "`${document.readyState} ${!!document.getElementById('subscribe')} ${Notification.permission}`") != "complete true granted"; tries++) Assert.True(tries < 500);

        // The page's own script runs and registers the worker; the push service it then asks for is not to be had here.
        await browser.EvaluateAsync(session, "document.querySelector('#subscribe button').click()");
        Assert.Equal("activated", await browser.EvaluateAsync(session, "navigator.serviceWorker.ready.then(ready => new Promise(done => { const look = () => ready.active.state === 'activated' ? done('activated') : setTimeout(look, 50); look(); }))"));
        Assert.Empty(host.Devices);

        var payload = PushPayload.Of(new("Stop by Tue 14:00: Main work, Quay End", "Unsafe wind could come.", "https://garden.example/j/x"), "e1");
        var shown = "";
        for (var tries = 0; shown.Length == 0 && tries < 20; tries++)
        {
            // The browser tells of the worker in its own time, and what is handed over before that is dropped.
            await browser.EvaluateAsync(session, "new Promise(done => setTimeout(done, 200))");
            if (Registration(browser) is not { } registrationId) continue;
            await browser.AskAsync("ServiceWorker.deliverPushMessage", new { origin, registrationId, data = payload }, session);
            shown = await browser.EvaluateAsync(session, "navigator.serviceWorker.ready.then(worker => new Promise(done => setTimeout(done, 200)).then(() => worker.getNotifications())).then(all => all.map(n => [n.title, n.body, n.tag, n.data].join('|')).join())");
        }

        Assert.Equal("Stop by Tue 14:00: Main work, Quay End|Unsafe wind could come.|e1|https://garden.example/j/x", shown);
    }

    private static string? Registration(Chromium browser) => browser.Events
        .Where(said => said["method"]?.ToString() == "ServiceWorker.workerRegistrationUpdated")
        .SelectMany(said => said["params"]!["registrations"]!.AsArray().OfType<JsonNode>())
        .LastOrDefault()?["registrationId"]!.ToString();
}
