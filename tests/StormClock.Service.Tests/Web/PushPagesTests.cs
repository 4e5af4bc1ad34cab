using System.Net;
using System.Security.Cryptography;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Delivery.Push;
using StormClock.Service.Tests.Messages;

namespace StormClock.Service.Tests.Web;

public class PushPagesTests
{
    private const string Endpoint = "https://push.example.net/send/abc";

    [Fact]
    public async Task Subscribe_ByTheScriptsForm_KeepsTheDeviceUnderItsName()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        var answer = await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys, "Ines' phone");

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        var kept = Assert.Single(host.Devices);
        Assert.Equal(("quay", "ines", "Ines' phone", Endpoint, device.Keys, QuayEnd.Now), (kept.GardenId, kept.PersonId, kept.DeviceName, kept.Endpoint, kept.Keys, kept.Added));
        var page = WebUtility.HtmlDecode(await host.ReadAsync(PushPagesHost.Page));
        Assert.Contains("Ines' phone, since", page);
        Assert.DoesNotContain(Endpoint, page);
        Assert.DoesNotContain(device.Keys.Secret, page);
    }

    [Fact]
    public async Task Subscribe_SameDeviceTwice_IsOneDevice()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys, "old name");
        await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys, "new name");
        Assert.Equal("new name", Assert.Single(host.Devices).DeviceName);
    }

    [Fact]
    public async Task Subscribe_WithoutScript_IsRefusedPolitely()
    {
        await using var host = await PushPagesHost.StartAsync();
        Assert.Contains("<noscript>", await host.ReadAsync(PushPagesHost.Page));
        var answer = await host.PostAsync(PushPagesHost.Page, ("endpoint", ""), ("p256dh", ""), ("auth", ""), ("name", "phone"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("mail: it brings everything", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Empty(host.Devices);
    }

    [Fact]
    public async Task TakeOff_NeedsNoScriptAndTwiceDoesNoHarm()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys);
        var id = Assert.Single(host.Devices).Id;
        for (var i = 0; i < 2; i++)
        {
            Assert.Equal(HttpStatusCode.SeeOther, (await host.PostAsync(PushPagesHost.Page, ("device", id))).StatusCode);
            Assert.Empty(host.Devices);
        }
    }

    [Fact]
    public async Task TakeOff_DeviceOfSomebodyElse_IsLeftAlone()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys);
        await host.PostAsync(PushPagesHost.Link("otto"), ("device", Assert.Single(host.Devices).Id));
        Assert.Single(host.Devices);
        Assert.DoesNotContain("my phone", await host.ReadAsync(PushPagesHost.Link("otto")));
    }

    [Theory]
    [InlineData("http://push.example.net/x")]
    [InlineData("https://192.168.1.1/x")]
    [InlineData("https://127.0.0.1/x")]
    [InlineData("https://[::1]/x")]
    [InlineData("https://localhost:8427/x")]
    [InlineData("https://printer.local/x")]
    [InlineData("https://router/x")]
    public async Task Subscribe_EndpointInTheHouse_IsRefused(string endpoint)
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        Assert.Equal(HttpStatusCode.BadRequest, (await host.SubscribeAsync(PushPagesHost.Page, endpoint, device.Keys)).StatusCode);
        Assert.Empty(host.Devices);
    }

    [Fact]
    public async Task Subscribe_KeysThatAreNone_IsRefused()
    {
        await using var host = await PushPagesHost.StartAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await host.SubscribeAsync(PushPagesHost.Page, Endpoint, new("AAAA", "AAAA"))).StatusCode);
        Assert.Empty(host.Devices);
    }

    [Fact]
    public async Task Subscribe_MoreThanAPersonHas_IsRefused()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        for (var i = 0; i < PushDesk.MostDevices; i++) await host.SubscribeAsync(PushPagesHost.Page, $"{Endpoint}{i}", device.Keys);
        Assert.Equal(HttpStatusCode.Conflict, (await host.SubscribeAsync(PushPagesHost.Page, $"{Endpoint}x", device.Keys)).StatusCode);
        Assert.Equal(PushDesk.MostDevices, host.Devices.Count);
    }

    [Fact]
    public async Task Name_Hostile_IsEncodedAndCut()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        await host.SubscribeAsync(PushPagesHost.Page, Endpoint, device.Keys, "<script>alert(1)</script>" + new string('y', 500));
        Assert.DoesNotContain("<script>alert", await host.ReadAsync(PushPagesHost.Page));
        Assert.InRange(Assert.Single(host.Devices).DeviceName.Length, 1, 41);
    }

    [Theory]
    [InlineData("GET")]
    [InlineData("HEAD")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    public async Task Request_WithoutPost_ChangesNothing(string method)
    {
        await using var host = await PushPagesHost.StartAsync();
        using var request = new HttpRequestMessage(new(method), $"{PushPagesHost.Page}?endpoint={Endpoint}&p256dh=x&auth=y");
        await host.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Empty(host.Devices);
    }

    [Fact]
    public async Task Post_WithoutHiddenField_IsRefused()
    {
        await using var host = await PushPagesHost.StartAsync();
        using var device = new TestDevice();
        var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["endpoint"] = Endpoint, ["p256dh"] = device.Keys.PublicKey, ["auth"] = device.Keys.Secret });
        Assert.Equal(HttpStatusCode.BadRequest, (await host.Client.PostAsync(PushPagesHost.Page, form, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Empty(host.Devices);
    }

    /// <summary>A link is good for one purpose: none for answering opens this page, and this page's answers nothing.</summary>
    [Fact]
    public async Task Link_OfAnotherPurposePersonOrTime_OpensNothing()
    {
        await using var host = await PushPagesHost.StartAsync();
        foreach (var purpose in Enum.GetValues<AckPurpose>().Where(purpose => purpose != AckPurpose.Push))
            Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync(PushPagesHost.Link("ines", purpose))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync(PushPagesHost.Page.Replace("/p/", "/j/", StringComparison.Ordinal))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync(PushPagesHost.Link("nobody"))).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await host.GetAsync(PushPagesHost.Link("ines", expiresHours: -1))).StatusCode);
    }

    /// <summary>A good link with one bit turned, cut, lengthened or re-signed with another key: none of 10,000 opens the page.</summary>
    [Fact]
    public async Task Link_Forged_OpensNothing()
    {
        await using var host = await PushPagesHost.StartAsync();
        var good = PushPagesHost.Page["/p/".Length..];
        Assert.Equal(HttpStatusCode.OK, (await host.GetAsync("/p/" + good)).StatusCode);

        var random = new Random(20270920);
        var opened = 0;
        for (var i = 0; i < 10_000; i++)
        {
            var forged = (i % 4) switch
            {
                0 => Turned(good, random),
                1 => good[..random.Next(1, good.Length)],
                2 => good + "AQ"[..random.Next(1, 3)],
                _ => new AckToken(AckPurpose.Push, "quay", "", "ines", "", QuayEnd.Hours(random.Next(1, 1000))).Sign(new("k1", RandomNumberGenerator.GetBytes(32))),
            };
            Assert.NotEqual(good, forged);
            if ((await host.GetAsync("/p/" + forged)).StatusCode == HttpStatusCode.OK) opened++;
        }

        Assert.Equal(0, opened);
    }

    /// <summary>The one script of the one page: from a file, none in the page, nothing from elsewhere.</summary>
    [Fact]
    public async Task Page_HasOneScriptFromAFileAndTheRestOfThePolicyStands()
    {
        await using var host = await PushPagesHost.StartAsync();
        var answer = await host.GetAsync(PushPagesHost.Page);
        Assert.Equal(
            "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'; script-src 'self'; worker-src 'self'",
            answer.Headers.GetValues("Content-Security-Policy").Single());
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, html.Split("<script").Length);
        Assert.Contains("<script src=\"../push.js\" defer", html);
        Assert.DoesNotMatch(@"(?i)\son\w+=|javascript:|style=|https?://", html);
    }

    [Theory]
    [InlineData("/push.js", "form.submit()")]
    [InlineData("/push-worker.js", "showNotification")]
    public async Task Scripts_AreServedAsScriptsAndLookedAtAnew(string path, string holds)
    {
        await using var host = await PushPagesHost.StartAsync();
        var answer = await host.GetAsync(path);
        Assert.Equal("text/javascript; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.True(answer.Headers.CacheControl!.NoCache);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single());
        Assert.Contains(holds, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static string Turned(string good, Random random)
    {
        const string letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        var text = good.ToCharArray();
        var at = random.Next(text.Length);
        text[at] = letters[(letters.IndexOf(text[at]) ^ (1 << random.Next(6))) & 63];
        return new(text);
    }
}
