using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Formats;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Delivery;
using StormClock.Service.Tests.Delivery.Push;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>One person, three channels, in the practice storm: each brings every message once and none waits for another.</summary>
public partial class ChannelsTests
{
    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 3, 0);

    [Fact]
    public async Task Storm_PersonWithThreeChannels_IsToldOnceOnEach()
    {
        await using var stub = await PostStub.StartAsync();
        using var phone = new TestDevice();
        using var data = new TempFolder();
        var garden = GardenReader.Read(await File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), TestContext.Current.CancellationToken), "tern-hook").Value!;
        var person = garden.People.First(person => person.Email is not null).Id;
        using (var store = StormStore.Open(data.Path))
        {
            await store.WriteAsync(transaction => Subscriptions.Put(transaction, new("d1", garden.Id, person, "phone", new Uri(stub.Address, "/send").ToString(), phone.Keys, Begin)), TestContext.Current.CancellationToken);
        }

        // The gateway is down for the first day: mail and notifications must not care.
        stub.Status = path => path == "/gate" ? 503 : 201;
        var mail = new TestChannel("email", DeliveryResult.Delivered);
        var storm = Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice", "storm")).Where(file => Path.GetExtension(file) is ".txt" or ".xml")
            .Select(file => new RawMessage(file, File.ReadAllBytes(file))).Select(raw => (MessageReader.Read(raw.Bytes).Value!.Issued, raw)).OrderBy(message => message.Issued).ToList();
        await using var service = await VirtualService.StartAsync(
            Begin, new GardenShelf([garden]), clock => [new ReplayFeed(storm, clock)], mail, Duration.FromMinutes(30), practice: true, data.Path, plan => plan with
            {
                PagesAddress = new("https://garden.example"),
                Push = new("mailto:garden@example.org", AllowLoopback: true),
                Webhooks = new Dictionary<string, WebhookTarget> { [$"{garden.Id}/{person}"] = new(new(stub.Address, "/gate"), Encoding.UTF8.GetBytes("an invented secret")) },
            });
        for (var i = 0; i < 24; i++) await service.AdvanceAsync(Duration.FromMinutes(30));
        stub.Status = _ => 201;
        for (var i = 0; i < 24; i++) await service.AdvanceAsync(Duration.FromMinutes(30));

        var mine = service.Outbox(garden.Id).Where(entry => entry.PersonId == person).ToList();
        string[] Told(string channel) => [.. mine.Where(entry => entry.Channel == channel && entry.State == OutboxState.Sent).Select(entry => entry.Key[..entry.Key.LastIndexOf('|')]).Order()];
        Assert.NotEmpty(Told("email"));
        Assert.Equal(Told("email"), Told("push"));
        Assert.NotEmpty(Told("webhook"));
        Assert.All(mine.Where(entry => entry.Channel == "push"), entry => Assert.EndsWith("|push:d1", entry.Key, StringComparison.Ordinal));

        var notes = stub.Got.Where(post => post.Path == "/send").Select(post => JsonDocument.Parse(phone.Read(post.Body)).RootElement).ToList();
        Assert.Equal(Told("push").Length, notes.Select(note => note.GetProperty("id").GetString()).Distinct().Count());
        Assert.Equal(notes.Count, Told("push").Length);
        Assert.All(notes, note => Assert.NotEmpty(note.GetProperty("title").GetString()!));
        Assert.Contains(notes, note => note.GetProperty("link").GetString()?.StartsWith("https://garden.example/j/", StringComparison.Ordinal) == true);
        var posts = stub.Got.Where(post => post.Path == "/gate").ToList();
        Assert.True(posts.Count > Told("webhook").Length, "what failed must have been tried again");
        Assert.DoesNotContain(service.Outbox(garden.Id), entry => entry.PersonId != person && entry.Channel != "email");
    }

    /// <summary>The real program: a device is subscribed by its page, the process is killed, and the device is still there.</summary>
    [Fact]
    public async Task Killed_AfterADeviceWasSubscribed_KeepsItAndItsKey()
    {
        using var folder = new TempFolder();
        using var phone = new TestDevice();
        Directory.CreateDirectory(folder.File("config/gardens"));
        await File.WriteAllTextAsync(folder.File("config/stormclock.yaml"), "pages: {listen: \"127.0.0.1:0\", address: \"https://garden.example\"}\n", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder.File("config/gardens/quay.yaml"), SampleBook.Good, TestContext.Current.CancellationToken);

        string before;
        using (var service = ServiceProcess.Start(folder.Path, "serve", "--config", "config", "--data", "data"))
        {
            using var browser = await BrowserAsync(service);
            var page = await OpenAsync(browser, Link(folder));
            before = PublicKey().Match(page).Groups[1].Value;
            var form = new FormUrlEncodedContent(new Dictionary<string, string>
            {
                ["__RequestVerificationToken"] = HiddenField().Match(page).Groups[1].Value,
                ["endpoint"] = "https://push.example.net/send/abc", ["p256dh"] = phone.Keys.PublicKey, ["auth"] = phone.Keys.Secret, ["name"] = "Ines' phone",
            });
            Assert.Equal(HttpStatusCode.SeeOther, (await browser.PostAsync(Link(folder), form, TestContext.Current.CancellationToken)).StatusCode);
            service.Kill();
            await service.EndAsync();
        }

        using var again = ServiceProcess.Start(folder.Path, "serve", "--config", "config", "--data", "data");
        using var other = await BrowserAsync(again);
        var after = WebUtility.HtmlDecode(await OpenAsync(other, Link(folder)));
        Assert.Contains("Ines' phone, since", after);
        Assert.Equal(before, PublicKey().Match(after).Groups[1].Value);
        Assert.NotEmpty(before);
        again.Terminate();
        Assert.Equal(0, await again.EndAsync());
    }

    private static string Link(TempFolder folder)
    {
        var key = AckKeyFile.ReadOrMake(folder.File("data/link-keys")).Value!.Newest;
        return "/p/" + new AckToken(AckPurpose.Push, "quay", "", "ines", "", Instant.FromUtc(2100, 1, 1, 0, 0)).Sign(key);
    }

    private static async Task<HttpClient> BrowserAsync(ServiceProcess service)
    {
        await service.HearAsync(said => Pages().IsMatch(said));
        return new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new(Pages().Match(service.Output).Groups[1].Value) };
    }

    /// <summary>The garden books are read in the first turn, which may end a little after the pages are up.</summary>
    private static async Task<string> OpenAsync(HttpClient browser, string page)
    {
        for (var tries = 0; ; tries++)
        {
            using var answer = await browser.GetAsync(page, TestContext.Current.CancellationToken);
            if (answer.IsSuccessStatusCode || tries == 100) return await answer.EnsureSuccessStatusCode().Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, TestContext.Current.CancellationToken);
        }
    }

    [GeneratedRegex(@"pages at (http://\S+)\n")]
    private static partial Regex Pages();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("data-key=\"([^\"]+)\"")]
    private static partial Regex PublicKey();
}
