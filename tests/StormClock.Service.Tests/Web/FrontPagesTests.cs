using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Core.Stages;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Tests.Pictures;
using StormClock.Service.Visits;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

public partial class FrontPagesTests
{
    private static readonly NowGarden Garden = new(
        "Quay End", QuayEnd.MainWork.Zone, Speeches.Us, Stage.MainWork, QuayEnd.MainWork.Reason, false, null,
        QuayEnd.MainWork.StopEarliest, QuayEnd.MainWork.StopLikely, [new NowJob(QuayEnd.Lemon, "a-token")]);

    private static readonly NowMessage Message = new(
        "20270920T103000Z-e1.eml", QuayEnd.Now, QuayEnd.MainWork.Zone, "Bo Marsh", "Stop by Tue 14:00 EDT", "the text of it");

    private static readonly NowGarden Drawn = Garden with
    {
        Picture = new(InventedPlans.TernHook, InventedPlans.Of(InventedPlans.TernHook), InventedPlans.Now, null, Speeches.Us),
    };

    public static TheoryData<string> Pages => ["/", "/health", "/storm.css", PagesHost.Link(), "/j/none", "/nowhere"];

    [Theory, MemberData(nameof(Pages))]
    public async Task Answer_Always_CarriesTheHeaders(string path)
    {
        await using var host = await PagesHost.StartAsync();
        var headers = (await host.GetAsync(path)).Headers;
        Assert.Equal(
            "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
            headers.GetValues("Content-Security-Policy").Single());
        Assert.Equal("no-referrer", headers.GetValues("Referrer-Policy").Single());
        Assert.StartsWith("noindex", headers.GetValues("X-Robots-Tag").Single(), StringComparison.Ordinal);
        Assert.Equal("nosniff", headers.GetValues("X-Content-Type-Options").Single());
    }

    /// <summary>What the policy forbids is not even there: no script, no inline style, nothing from elsewhere.</summary>
    [Fact]
    public async Task Pages_NeedOnlyTheOneStyleSheet()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Now = new([Drawn], [], [Message]);
        foreach (var path in new[] { "/", PagesHost.Link(), "/j/none" })
        {
            var html = await host.ReadAsync(path);
            Assert.DoesNotMatch(Foreign(), html);
            var sheet = new Uri(new Uri(host.Address, path), StyleSheet().Match(html).Groups[1].Value);
            Assert.Equal("text/css", (await host.GetAsync(sheet.PathAndQuery)).Content.Headers.ContentType!.MediaType);
        }
    }

    [Fact]
    public async Task Front_NearTheBox_ShowsGardenMessagesAndMarks()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Now = new([Garden], ["No fresh word from the forecast since Mon 03:00 EDT."], [Message]);
        var html = WebUtility.HtmlDecode(await host.ReadAsync("/"));
        Assert.All(
            (string[])["Quay End", "Unsafe wind could come as early as", "Main work: 39", "potted lemon", "href=\"j/a-token\"", "the text of it", "No fresh word", "Ada and Bo"],
            expected => Assert.Contains(expected, html, StringComparison.Ordinal));
    }

    /// <summary>Where phones reach it, strangers may: no tokens, no people, no messages.</summary>
    [Fact]
    public async Task Front_ReachableByPhones_KeepsPeopleAndTokensBack()
    {
        await using var host = await PagesHost.StartAsync(pagesAddress: new Uri("https://garden.example"));
        host.Book.Now = new([Garden], [], [Message]);
        var html = WebUtility.HtmlDecode(await host.ReadAsync("/"));
        Assert.Contains("Quay End", html, StringComparison.Ordinal);
        Assert.All((string[])["a-token", "Ada", "Bo", "the text of it", "Next jobs"], hidden => Assert.DoesNotContain(hidden, html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Front_NearTheBox_DrawsTheTimeLineWithItsTextBesideIt()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Now = new([Drawn], [], []);
        var html = WebUtility.HtmlDecode(await host.ReadAsync("/"));
        Assert.Equal(2, html.Split("<svg ").Length - 1);
        Assert.All(
            (string[])["id=\"tern-hook-wide-title\"", "id=\"tern-hook-narrow-title\"", "role=\"img\"", "1. Lay flat: Satsumas in half barrels (2): Delphine and Amos"],
            expected => Assert.Contains(expected, html, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true, "The first look at the forecast is under way.")]
    [InlineData(false, "There is no garden yet.")]
    public async Task Front_NoGardenToShow_SaysWhetherOneIsComing(bool starting, string said)
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Now = new([], [], []) { IsStarting = starting };
        Assert.Contains(said, await host.Client.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Front_ReachableByPhones_DrawsTheWindWithoutWorkOrPeople()
    {
        await using var host = await PagesHost.StartAsync(pagesAddress: new Uri("https://garden.example"));
        host.Book.Now = new([Drawn], [], []);
        var html = await host.ReadAsync("/");
        Assert.Contains("ground work could stop", html, StringComparison.Ordinal);
        Assert.All((string[])["Delphine", "Amos", "Satsumas"], hidden => Assert.DoesNotContain(hidden, html, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Stage.GardenClosed, false)]
    [InlineData(Stage.MainWork, true)]
    public async Task Front_WorkIsOver_NamesNoJob(Stage stage, bool leave)
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Now = new([Drawn with { Stage = stage, Leave = leave }], [], []);
        var html = await host.ReadAsync("/");
        Assert.All((string[])["lemon", "<svg", "Satsumas"], hidden => Assert.DoesNotContain(hidden, html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Front_HostileNames_AreEncoded()
    {
        await using var host = await PagesHost.StartAsync();
        const string name = "<script>alert(1)</script>\"'>";
        host.Book.Now = new(
            [Garden with { Name = name, Jobs = [new NowJob(QuayEnd.Lemon with { ItemName = name }, name)], Reason = new(StageCause.Note, name, null) }],
            [name],
            [Message with { Subject = name, Text = name, ToName = name, FileName = name }]);
        Assert.DoesNotContain("<script", await host.ReadAsync("/"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Test_FromTheBoxItself_IsSentByItsFormOnly()
    {
        await using var host = await PagesHost.StartAsync(tests: true);
        host.Book.Now = new([], [], []) { Testable = [new("quay/bo", "Bo, bo@garden.example")] };
        var hidden = (await host.ReadAsync("/")).Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        Assert.Equal(HttpStatusCode.BadRequest, (await PagesHost.PostAsync(host.Client, "/test", "quay/bo", null, "to")).StatusCode);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await host.GetAsync("/test")).StatusCode);
        Assert.Empty(host.Book.Tests);
        var sent = await PagesHost.PostAsync(host.Client, "/test", "quay/bo", hidden, "to");
        Assert.Contains("Handed over for bo@garden.example: taken.", await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(["quay/bo"], host.Book.Tests);
    }

    [Fact]
    public async Task Test_OnceThereIsAPasscode_IsNotForWhoeverSitsAtTheBox()
    {
        var data = Directory.CreateTempSubdirectory();
        await using var host = await PagesHost.StartAsync(tests: true, data: data);
        host.Book.Now = new([], [], []) { Testable = [new("quay/bo", "Bo")] };
        var hidden = (await host.ReadAsync("/")).Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        new PasscodeFile(Path.Combine(data.FullName, PasscodeFile.Name)).Set("tern hook four oars");
        Assert.Equal(HttpStatusCode.Forbidden, (await PagesHost.PostAsync(host.Client, "/test", "quay/bo", hidden, "to")).StatusCode);
        Assert.Empty(host.Book.Tests);
    }

    /// <summary>Under another name (that of a page elsewhere that points here), or where it is not offered.</summary>
    [Theory]
    [InlineData(true, "evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData(true, "192.0.2.7", HttpStatusCode.Forbidden)]
    [InlineData(false, "localhost", HttpStatusCode.Forbidden)]
    public async Task Test_NotOfferedOrUnderAnotherName_IsRefused(bool offered, string name, HttpStatusCode expected)
    {
        await using var host = await PagesHost.StartAsync(tests: offered);
        host.Book.Now = new([], [], []) { Testable = [new("quay/bo", "Bo")] };
        var hidden = (await host.ReadAsync("/")).Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        using var request = new HttpRequestMessage(HttpMethod.Post, "/test") { Content = new FormUrlEncodedContent(new Dictionary<string, string> { ["to"] = "quay/bo", ["__RequestVerificationToken"] = hidden }) };
        request.Headers.Host = name;
        Assert.Equal(expected, (await host.Client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Empty(host.Book.Tests);
    }

    [Fact]
    public async Task Front_GardenClosed_ShowsWhoIsInNearTheBoxAlone()
    {
        var closed = Garden with { Stage = Stage.GardenClosed, People = [new("Ada", QuayEnd.Now), new("Bo", null, "b-token")] };
        await using (var host = await PagesHost.StartAsync())
        {
            host.Book.Now = new([closed], [], []);
            var html = WebUtility.HtmlDecode(await host.ReadAsync("/"));
            Assert.All((string[])["Ada is in, Mon\u00A006:30\u00A0EDT", "Nothing heard of Bo yet. Phone, do not go out", "href=\"j/b-token\""], expected => Assert.Contains(expected, html, StringComparison.Ordinal));
        }

        await using var open = await PagesHost.StartAsync(pagesAddress: new Uri("https://garden.example"));
        open.Book.Now = new([closed], [], []);
        Assert.DoesNotContain("Ada", await open.ReadAsync("/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Health_AllWell_IsJsonWithAges()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Health = new(true, Duration.FromSeconds(90), [new FeedNow("advisories", QuayEnd.Now - Duration.FromMinutes(5)), new FeedNow("alerts", null)]);
        var answer = await host.GetAsync("/health");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(90, json.GetProperty("oldestUnsentSeconds").GetDouble());
        Assert.Equal(300, json.GetProperty("feeds")[0].GetProperty("ageSeconds").GetDouble());
        Assert.Equal(JsonValueKind.Null, json.GetProperty("feeds")[1].GetProperty("ageSeconds").ValueKind);
    }

    [Fact]
    public async Task Health_SomethingParked_IsCountedByChannel()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Health = new(true, null, []) { Channels = [new("email", 0, 1), new("push", 2, 3)] };
        var channels = JsonDocument.Parse(await host.ReadAsync("/health")).RootElement.GetProperty("channels");
        Assert.Equal("""[{"name":"email","waiting":0,"parked":1},{"name":"push","waiting":2,"parked":3}]""", channels.GetRawText());
    }

    [Fact]
    public async Task Health_SomethingWrong_Is503()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Health = new(false, null, []);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await host.GetAsync("/health")).StatusCode);
    }

    [GeneratedRegex(@"<(script|img|iframe|style)\b|\sstyle=|\son\w+=|https?://", RegexOptions.IgnoreCase)]
    private static partial Regex Foreign();

    [GeneratedRegex("<link rel=\"stylesheet\" href=\"([^\"]+)\"")]
    private static partial Regex StyleSheet();
}
