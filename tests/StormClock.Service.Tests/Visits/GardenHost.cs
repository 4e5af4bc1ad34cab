using System.Net;
using System.Text.RegularExpressions;
using StormClock.Core.Garden;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Visits;

/// <summary>The whole service in the practice storm, while work is planned, and browsers that open its pages.</summary>
internal sealed partial class GardenHost : IAsyncDisposable
{
    public const string Passcode = "tern hook four oars";

    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 11, 0);

    private GardenHost(TempFolder data, VirtualService service, TestChannel mail) => (Data, Service, Mail) = (data, service, mail);

    public TempFolder Data { get; }

    public VirtualService Service { get; }

    public TestChannel Mail { get; }

    public static GardenBook Garden => PracticeStorm.Garden;

    public static async Task<GardenHost> StartAsync(
        bool passcode = false, Uri? pagesAddress = null, GardenShelf? shelf = null, string? config = null, int linksPerMinute = 10_000, IReadOnlyList<(Instant Issued, RawMessage Message)>? messages = null)
    {
        var data = new TempFolder();
        if (passcode) new PasscodeFile(data.File(PasscodeFile.Name)).Set(Passcode);
        var mail = new TestChannel("email", DeliveryResult.Delivered);
        var service = await VirtualService.StartAsync(
            Begin, shelf ?? new GardenShelf([Garden]), clock => [new ReplayFeed(messages ?? PracticeStorm.Messages, clock)], mail, Duration.FromMinutes(30), practice: true, data.Path,
            plan => plan with { PagesAddress = pagesAddress, LinksPerMinute = linksPerMinute, ConfigFolder = config });
        return new(data, service, mail);
    }

    public HttpClient NewBrowser() =>
        new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = Service.Address };

    public static async Task<string> ReadAsync(HttpClient browser, string path)
    {
        var answer = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {answer.StatusCode}");
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    public static async Task<HttpStatusCode> StatusAsync(HttpClient browser, string path) => (await browser.GetAsync(path, TestContext.Current.CancellationToken)).StatusCode;

    /// <summary>Sends a form as a browser would: with the hidden field of the page that shows it.</summary>
    public static async Task<HttpResponseMessage> PostAsync(HttpClient browser, string page, string action, params (string Name, string Value)[] fields)
    {
        var form = fields.Select(field => KeyValuePair.Create(field.Name, field.Value)).ToList();
        if (HiddenField().Match(await ReadAsync(browser, page)) is { Success: true } hidden) form.Add(new("__RequestVerificationToken", hidden.Groups[1].Value));
        return await browser.PostAsync(action, new FormUrlEncodedContent(form), TestContext.Current.CancellationToken);
    }

    /// <summary>A browser that came in by a link sent to this address.</summary>
    public async Task<HttpClient> EnterAsync(string email)
    {
        var browser = NewBrowser();
        await PostAsync(browser, "in", "in", ("address", email));
        var link = await LinkAsync(email);
        var entered = await PostAsync(browser, link, link, ("go", "1"));
        Assert.Equal(HttpStatusCode.SeeOther, entered.StatusCode);
        return browser;
    }

    public async Task<HttpClient> EnterByPasscodeAsync()
    {
        var browser = NewBrowser();
        Assert.Equal(HttpStatusCode.SeeOther, (await PostAsync(browser, "in", "in", ("passcode", Passcode))).StatusCode);
        return browser;
    }

    /// <summary>The way of the newest sign-in link that was sent to an address.</summary>
    public async Task<string> LinkAsync(string email)
    {
        for (var wait = 0; wait < 500; wait++)
        {
            if (Mail.Sent.LastOrDefault(letter => letter.ToAddress == email && InLink().IsMatch(letter.Text)) is { } letter) return InLink().Match(letter.Text).Groups[1].Value;
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, TestContext.Current.CancellationToken);
        }

        throw new InvalidOperationException("no link came");
    }

    public async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        Data.Dispose();
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("/(in/[A-Za-z0-9_-]{43})")]
    private static partial Regex InLink();
}
