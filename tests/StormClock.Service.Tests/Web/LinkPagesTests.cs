using System.Net;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

public class LinkPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Get_Link_ShowsTheJobAndChangesNothing()
    {
        await using var host = await PagesHost.StartAsync();
        var page = await host.ReadAsync(PagesHost.Link());
        Assert.Contains("Weigh down: potted lemon (4)", page, StringComparison.Ordinal);
        Assert.Contains("For Ada", page, StringComparison.Ordinal);
        Assert.Empty(host.Book.Answers);
    }

    /// <summary>What a mail scanner may try: looking in every way, with answers in the address too.</summary>
    [Theory]
    [InlineData("GET", "?answer=done")]
    [InlineData("HEAD", "")]
    [InlineData("OPTIONS", "?answer=done")]
    [InlineData("PUT", "?answer=done")]
    [InlineData("DELETE", "")]
    public async Task Request_WithoutPost_ChangesNothing(string method, string query)
    {
        await using var host = await PagesHost.StartAsync();
        using var request = new HttpRequestMessage(new HttpMethod(method), PagesHost.Link() + query);
        var answer = await host.Client.SendAsync(request, Cancel);
        Assert.Equal(method is "GET" or "HEAD", answer.StatusCode == HttpStatusCode.OK);
        Assert.Empty(host.Book.Answers);
    }

    [Theory]
    [InlineData("done", JobAnswer.Done, "Recorded: done.")]
    [InlineData("cannot", JobAnswer.Cannot, "Recorded: cannot be done.")]
    [InlineData("later", JobAnswer.Later, "Recorded: later.")]
    [InlineData("no_time", JobAnswer.NoTime, "Recorded: cannot be done, no time.")]
    [InlineData("no_material", JobAnswer.NoMaterial, "Recorded: cannot be done, no material.")]
    [InlineData("needs_person", JobAnswer.NeedsPerson, "Recorded: cannot be done, it needs one more person.")]
    [InlineData("take_back", JobAnswer.TakeBack, "Not marked yet")]
    public async Task Press_Button_IsTakenAndShown(string button, JobAnswer expected, string said)
    {
        await using var host = await PagesHost.StartAsync();
        var pressed = await host.PressAsync(PagesHost.Link(), button);

        Assert.Equal(HttpStatusCode.SeeOther, pressed.StatusCode);
        var (token, answer) = Assert.Single(host.Book.Answers);
        Assert.Equal((expected, "lemon/weigh_down", "ada"), (answer, token.Subject, token.PersonId));
        var shown = new Uri(new Uri(host.Address, PagesHost.Link()), pressed.Headers.Location!);
        Assert.Equal(PagesHost.Link(), shown.PathAndQuery);
        Assert.Contains(said, await host.ReadAsync(shown.PathAndQuery), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Press_Twice_IsAnsweredAlike()
    {
        await using var host = await PagesHost.StartAsync();
        var first = await host.PressAsync(PagesHost.Link(), "done");
        var second = await host.PressAsync(PagesHost.Link(), "done");
        Assert.Equal((first.StatusCode, first.Headers.Location), (second.StatusCode, second.Headers.Location));
        Assert.Equal(host.Book.Answers[0], host.Book.Answers[1]);
    }

    [Fact]
    public async Task Post_WithoutHiddenField_IsRefused()
    {
        await using var host = await PagesHost.StartAsync();
        await host.GetAsync(PagesHost.Link());
        var answer = await PagesHost.PostAsync(host.Client, PagesHost.Link(), "done", hidden: null);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Post_HiddenFieldOfAnotherBrowser_IsRefused()
    {
        await using var host = await PagesHost.StartAsync();
        using var other = host.NewBrowser();
        await other.GetAsync(PagesHost.Link(), Cancel);
        var page = await host.ReadAsync(PagesHost.Link());
        var hidden = page.Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        Assert.Equal(HttpStatusCode.BadRequest, (await PagesHost.PostAsync(other, PagesHost.Link(), "done", hidden)).StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Theory]
    [InlineData("")]
    [InlineData("DONE")]
    [InlineData("0")]
    [InlineData("everything")]
    public async Task Press_UnknownAnswer_IsRefused(string answer)
    {
        await using var host = await PagesHost.StartAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await host.PressAsync(PagesHost.Link(), answer)).StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Post_NoForm_IsRefused()
    {
        await using var host = await PagesHost.StartAsync();
        var answer = await host.Client.PostAsync(PagesHost.Link(), new StringContent("{\"answer\":\"done\"}"), Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Post_HugeForm_IsRefused()
    {
        await using var host = await PagesHost.StartAsync();
        var answer = await PagesHost.PostAsync(host.Client, PagesHost.Link(), new string('x', 100_000), hidden: null);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Link_Expired_IsGone()
    {
        await using var host = await PagesHost.StartAsync();
        var link = PagesHost.Link(expiresHours: 0);
        Assert.Equal(HttpStatusCode.Gone, (await host.GetAsync(link)).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await PagesHost.PostAsync(host.Client, link, "done", null)).StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Link_TamperedWith_IsNotFoundAndTellsNothing()
    {
        await using var host = await PagesHost.StartAsync();
        var link = PagesHost.Link();
        var tampered = link[..^1] + (link[^1] == 'A' ? 'B' : 'A');
        Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync(tampered)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await PagesHost.PostAsync(host.Client, tampered, "done", null)).StatusCode);
        Assert.DoesNotContain("lemon", await host.ReadAsync(tampered), StringComparison.Ordinal);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Link_OfAForgottenEpisode_IsNotFoundEvenWhenPressed()
    {
        await using var host = await PagesHost.StartAsync();
        await host.GetAsync(PagesHost.Link());
        host.Book.Forgets = true;
        Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync(PagesHost.Link())).StatusCode);
        host.Book.Forgets = false;
        var page = await host.ReadAsync(PagesHost.Link());
        host.Book.Forgets = true;
        var hidden = page.Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        Assert.Equal(HttpStatusCode.NotFound, (await PagesHost.PostAsync(host.Client, PagesHost.Link(), "done", hidden)).StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public async Task Page_HostileNames_AreEncoded()
    {
        await using var host = await PagesHost.StartAsync();
        const string name = "<script>alert(1)</script>\"'>";
        host.Book.Change = page => page with
        {
            GardenName = name, PersonName = name,
            Jobs = [new LinkJob(QuayEnd.Lemon with { ItemName = name, AreaName = name, SiteName = name }, Core.Garden.JobProgress.Done, name, QuayEnd.Now)],
        };
        var html = await host.ReadAsync(PagesHost.Link());
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    /// <summary>A form opened before a restart still works after it: its keys are in the data folder.</summary>
    [Fact]
    public async Task Press_AfterARestart_IsTaken()
    {
        var before = await PagesHost.StartAsync();
        var page = await before.GetAsync(PagesHost.Link());
        var cookie = page.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        var hidden = (await page.Content.ReadAsStringAsync(Cancel)).Split("__RequestVerificationToken\" value=\"")[1].Split('"')[0];
        await using var after = await PagesHost.StartAsync(data: await before.StopAsync());
        using var browser = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = after.Address };
        browser.DefaultRequestHeaders.Add("Cookie", cookie);
        Assert.Equal(HttpStatusCode.SeeOther, (await PagesHost.PostAsync(browser, PagesHost.Link(), "done", hidden)).StatusCode);
    }

    [Fact]
    public async Task Page_GardenClosed_SaysSoFirstAndStillTakesDone()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { Stage = Stage.GardenClosed };
        var html = await host.ReadAsync(PagesHost.Link());
        Assert.True(html.IndexOf("Garden closed", StringComparison.Ordinal) < html.IndexOf("<h1", StringComparison.Ordinal));
        Assert.DoesNotContain("value=\"later\"", html, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, (await host.PressAsync(PagesHost.Link(), "done")).StatusCode);
    }

    [Theory]
    [InlineData(null, "Leave now", false)]
    [InlineData(-1.0, "Leave now", false)]
    [InlineData(5.0, "Leave by Mon\u00A011:30\u00A0EDT", true)]
    public async Task Page_LeaveHolds_OutranksTheClosedGarden(double? byHours, string expected, bool workGoesOn)
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { Leave = true, LeaveBy = byHours is { } hours ? QuayEnd.Hours(hours) : null };
        var html = WebUtility.HtmlDecode(await host.ReadAsync(PagesHost.Link()));
        Assert.True(html.IndexOf(expected, StringComparison.Ordinal) is > 0 and var at && at < html.IndexOf("<h1", StringComparison.Ordinal));
        Assert.Equal(workGoesOn, html.Contains("value=\"later\"", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_PlanMovedOn_SaysSo()
    {
        await using var host = await PagesHost.StartAsync();
        Assert.DoesNotContain("moved on", await host.ReadAsync(PagesHost.Link()), StringComparison.Ordinal);
        host.Book.Change = page => page with { PlanMovedOn = true };
        Assert.Contains("moved on", await host.ReadAsync(PagesHost.Link()), StringComparison.Ordinal);
    }

    /// <summary>Why not is asked without script, on the page of one job and on that of all.</summary>
    [Theory]
    [InlineData(AckPurpose.Job)]
    [InlineData(AckPurpose.All)]
    public async Task Page_Cannot_AsksWhy(AckPurpose purpose)
    {
        await using var host = await PagesHost.StartAsync();
        var html = await host.ReadAsync(PagesHost.Link(purpose));
        Assert.All((string[])["done", "later", "no_time", "no_material", "needs_person", "cannot"], answer => Assert.Contains($"value=\"{answer}\"", html, StringComparison.Ordinal));
        Assert.DoesNotContain("take_back", html, StringComparison.Ordinal);
        host.Book.Change = page => page with { CanTakeBack = true };
        Assert.Contains("value=\"take_back\"", await host.ReadAsync(PagesHost.Link(purpose)), StringComparison.Ordinal);
    }

    /// <summary>Where the work is over nobody is told when to do it, nor offered later.</summary>
    [Fact]
    public async Task Page_PlannedOrLeftOut_SaysWhatTheNewestPlanHas()
    {
        await using var host = await PagesHost.StartAsync();
        Assert.Contains("Newest plan: start", await host.ReadAsync(PagesHost.Link()), StringComparison.Ordinal);
        host.Book.Change = page => page with { Jobs = [page.Jobs[0] with { LeftOut = LeftCause.StoreFull }] };
        Assert.Contains("Left out of the newest plan: the store is full", await host.ReadAsync(PagesHost.Link()), StringComparison.Ordinal);
        host.Book.Change = page => page with { Stage = Stage.GardenClosed, Jobs = [page.Jobs[0] with { LeftOut = LeftCause.StoreFull }] };
        Assert.DoesNotContain("newest plan", await host.ReadAsync(PagesHost.Link()), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Page_OfAnEarlierSpell_SaysThatItChangesNothingToday()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { EpisodeOver = true, PlanMovedOn = true };
        var html = await host.ReadAsync(PagesHost.Link());
        Assert.Contains("of an earlier spell", html, StringComparison.Ordinal);
        Assert.DoesNotContain("still counts", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Newest plan", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Indoors_Closed_ShowsWhoIsIn()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { Stage = Stage.GardenClosed, Others = [new("Bo", QuayEnd.Now), new("Cy", null)] };
        var html = WebUtility.HtmlDecode(await host.ReadAsync(PagesHost.Link(AckPurpose.Indoors, "")));
        Assert.Contains("Bo is in, Mon\u00A006:30\u00A0EDT", html, StringComparison.Ordinal);
        Assert.Contains("Nothing heard of Cy yet", html, StringComparison.Ordinal);
        Assert.Contains("Nobody goes out to look", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Stage.MainWork, false)]
    [InlineData(Stage.Recheck, false)]
    [InlineData(Stage.GardenClosed, true)]
    public async Task Indoors_NotClosed_HasNothingToPress(Stage stage, bool over)
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { Stage = stage, EpisodeOver = over };
        var html = await host.ReadAsync(PagesHost.Link(AckPurpose.Indoors, ""));
        Assert.DoesNotContain("<button", html, StringComparison.Ordinal);
        Assert.Contains("not closed now", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Indoors_OneButton_SaysIAmIn()
    {
        await using var host = await PagesHost.StartAsync();
        host.Book.Change = page => page with { Stage = Stage.GardenClosed };
        var link = PagesHost.Link(AckPurpose.Indoors, "");
        Assert.Equal(1, (await host.ReadAsync(link)).Split("<button").Length - 1);
        Assert.Equal(HttpStatusCode.BadRequest, (await host.PressAsync(link, "later")).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await host.PressAsync(link, "done")).StatusCode);
        Assert.Contains("You said that you are in", await host.ReadAsync(link), StringComparison.Ordinal);
        Assert.Equal(AckPurpose.Indoors, Assert.Single(host.Book.Answers).Token.Purpose);
    }

    [Fact]
    public async Task Links_TooManyFromOneAddress_AreHeldBack()
    {
        await using var host = await PagesHost.StartAsync(linkRequestsPerMinute: 3);
        for (var i = 0; i < 3; i++) Assert.Equal(HttpStatusCode.OK, (await host.GetAsync(PagesHost.Link())).StatusCode);

        var held = await host.GetAsync(PagesHost.Link());
        Assert.Equal(HttpStatusCode.TooManyRequests, held.StatusCode);
        Assert.Equal("no-referrer", held.Headers.GetValues("Referrer-Policy").Single());
        Assert.Equal(HttpStatusCode.OK, (await host.GetAsync("/")).StatusCode);
    }
}
