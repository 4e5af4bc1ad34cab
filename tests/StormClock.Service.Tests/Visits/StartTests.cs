using System.Net;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Desk;
using StormClock.Service.Settings;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Visits;

public sealed class StartTests : IAsyncLifetime
{
    private static readonly (string, string)[] Good =
    [
        ("garden", "Heron's Reach \"north\""), ("latitude", "29.72"), ("longitude", "-84.98"), ("zone", "America/New_York"), ("units", "us"), ("terrain", "open_coast"),
        ("person", "Ada"), ("email", "ada@example.org"), ("helper", "Bo"), ("helper_email", ""), ("area", "Front porch"), ("exposure", "funnel"),
    ];

    private readonly TempFolder config = new();
    private GardenHost host = null!;
    private HttpClient browser = null!;

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(config.File("gardens"));
        host = await GardenHost.StartAsync(shelf: new GardenShelf(config.File("gardens")), config: config.Path);
        browser = host.NewBrowser();
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await host.DisposeAsync();
        config.Dispose();
    }

    [Fact]
    public async Task Start_NothingConfigured_LeadsFromTheFrontPageToAGardenThatCanBeWalked()
    {
        Assert.Contains("href=\"start\"", await GardenHost.ReadAsync(browser, ""), StringComparison.Ordinal);

        var made = await GardenHost.PostAsync(browser, "start", "start", Good);

        Assert.Equal((HttpStatusCode.SeeOther, "start/mail?garden=herons-reach-north"), (made.StatusCode, made.Headers.Location?.OriginalString));
        var book = GardenFiles.Read(config.File("gardens/herons-reach-north.yaml")).Value!;
        Assert.Equal(("Heron's Reach \"north\"", UnitSystem.UsCustomary, Terrain.OpenCoast, Exposure.Funnel), (book.Name, book.Units, book.Sites[0].Terrain, book.Areas[0].Exposure));
        Assert.Equal([("Ada", "ada@example.org", PersonRole.Gardener), ("Bo", null, PersonRole.Helper)], book.People.Select(person => (person.Name, person.Email, person.Role)));
        Assert.Contains("g/herons-reach-north/walk/front-porch", await GardenHost.ReadAsync(browser, "start/mail?garden=herons-reach-north"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, "g/herons-reach-north/walk/front-porch"));
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, "g/herons-reach-north/now"));
    }

    [Theory]
    [InlineData("latitude", "north of here", "latitude")]
    [InlineData("latitude", "91", "latitude")]
    [InlineData("longitude", "", "longitude")]
    [InlineData("zone", "Mars/Olympus", "zone")]
    [InlineData("email", "ada at example", "email")]
    [InlineData("terrain", "swamp", "terrain")]
    [InlineData("garden", "", "name")]
    public async Task Start_WhatABookMayNotSay_IsRefusedAndKeepsTheRest(string field, string value, string told)
    {
        var answer = await GardenHost.PostAsync(browser, "start", "start", [.. Good.Select(pair => pair.Item1 == field ? (field, value) : pair)]);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("Nothing was changed", page, StringComparison.Ordinal);
        Assert.Contains(told, page, StringComparison.Ordinal);
        Assert.Contains("value=\"Front porch\"", page, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(config.File("gardens")));
    }

    [Fact]
    public async Task Start_SameNameTwice_MakesTwoGardens()
    {
        for (var time = 0; time < 2; time++) Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, "start", "start", Good)).StatusCode);
        Assert.Equal(["herons-reach-north-2.yaml", "herons-reach-north.yaml"], Directory.GetFiles(config.File("gardens")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    /// <summary>Nothing listens there, so nothing is kept.</summary>
    [Fact]
    public async Task Mail_ServerThatTakesNothing_IsNotKept()
    {
        await GardenHost.PostAsync(browser, "start", "start", Good);
        var answer = await GardenHost.PostAsync(
            browser, "start/mail", "start/mail", ("host", "127.0.0.1"), ("port", "9"), ("security", "tls"), ("user", ""), ("password", ""), ("from", "garden@example.org"), ("to", "herons-reach-north/ada"));
        Assert.Contains("The letter was not taken", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.False(File.Exists(config.File("stormclock.yaml")));
        Assert.False(File.Exists(host.Data.File("mail-password")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# remark\npages:\n  listen: \"127.0.0.1:9000\"")]
    public void MailSection_AddedToAFile_LeavesTheRestAsItWas(string before)
    {
        var file = config.File("stormclock.yaml");
        File.WriteAllText(file, before);
        var read = MailSection.Add(file, "mail.example.org", 465, MailSecurity.Tls, "us\"er", "/data/mail-password", "garden@example.org");
        Assert.Empty(read.Faults);
        Assert.StartsWith(before, File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(("mail.example.org", 465, "us\"er", "/data/mail-password"), (read.Value!.Mail!.Host, read.Value.Mail.Port, read.Value.Mail.User, read.Value.Mail.PasswordFile));

        var now = File.ReadAllText(file);
        Assert.False(MailSection.Add(file, "other.example.org", 25, MailSecurity.Tls, null, null, "x@example.org").IsGood);
        Assert.Equal(now, File.ReadAllText(file));
    }

    [Fact]
    public void MailSection_ThatCouldNotBeRead_IsNotWritten()
    {
        var file = config.File("stormclock.yaml");
        File.WriteAllText(file, "pages:\n  listen: \"127.0.0.1:9000\"\n");
        Assert.False(MailSection.Add(file, "mail.example.org", 465, MailSecurity.Tls, null, null, "no address").IsGood);
        Assert.Equal("pages:\n  listen: \"127.0.0.1:9000\"\n", File.ReadAllText(file));
        Assert.Equal(["gardens", "stormclock.yaml"], Directory.GetFileSystemEntries(config.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Practice_Begun_ShowsWhatPeopleWouldHaveBeenTold()
    {
        Directory.CreateDirectory(config.File("practice/storm"));
        foreach (var file in Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice"), "*", SearchOption.AllDirectories))
            File.Copy(file, config.File(Path.Combine("practice", Path.GetRelativePath(Path.Combine(ConfigFiles.Folder, "practice"), file))));
        await GardenHost.PostAsync(browser, "start", "start/practice");
        var page = "";
        for (var wait = 0; wait < 600 && !page.Contains("What held when", StringComparison.Ordinal); wait++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200), TimeProvider.System, TestContext.Current.CancellationToken);
            page = await GardenHost.ReadAsync(browser, "start/practice");
        }

        Assert.True(page.Contains("Garden closed", StringComparison.Ordinal), page);
        Assert.Contains("Recheck", page, StringComparison.Ordinal);
        Assert.Empty(host.Mail.Sent);
    }

    [Fact]
    public async Task Start_Stranger_IsNotLetIn()
    {
        await using var closed = await GardenHost.StartAsync(passcode: true, shelf: new GardenShelf(config.File("gardens")));
        using var stranger = closed.NewBrowser();
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(stranger, "start"));
        Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(stranger, "in", "start", Good)).StatusCode);
    }
}
