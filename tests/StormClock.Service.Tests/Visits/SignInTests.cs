using System.Net;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Visits;

public class SignInTests
{
    private const string Gardener = "gardener@practice.invalid";
    private static string Now => $"g/{GardenHost.Garden.Id}/now";

    [Fact]
    public async Task Box_WithoutPasscode_IsOpenUnderItsOwnNameOnly()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, Now));

        foreach (var forwarding in new[] { "X-Forwarded-For", "Forwarded", "X-Real-IP", "Via" })
        {
            using var throughProxy = host.NewBrowser();
            throughProxy.DefaultRequestHeaders.Add(forwarding, "for=198.51.100.7".Replace("for=", forwarding == "Forwarded" ? "for=" : forwarding == "Via" ? "1.1 " : "", StringComparison.Ordinal));
            Assert.NotEqual(HttpStatusCode.OK, await GardenHost.StatusAsync(throughProxy, Now));
        }

        browser.DefaultRequestHeaders.Host = "rebound.example";
        Assert.Equal(HttpStatusCode.MisdirectedRequest, await GardenHost.StatusAsync(browser, Now));
        browser.DefaultRequestHeaders.Host = "192.0.2.7";
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(browser, Now));
    }

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, "https://garden.example")]
    public async Task Stranger_WherePasscodeOrPhonesAre_IsAskedWhoItIs(bool passcode, string? address)
    {
        await using var host = await GardenHost.StartAsync(passcode, address is null ? null : new(address));
        using var browser = host.NewBrowser();
        var answer = await browser.GetAsync(Now, TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.SeeOther, "../../in"), (answer.StatusCode, answer.Headers.Location?.OriginalString));
        Assert.DoesNotContain("Tie", await GardenHost.ReadAsync(browser, ""), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(browser, "in", $"g/{GardenHost.Garden.Id}/answer", ("press", "done x"))).StatusCode);
    }

    [Fact]
    public async Task Passcode_RightOne_OpensAllAndSigningOutClosesEvenForACopiedCookie()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var wrong = host.NewBrowser();
        var refused = await GardenHost.PostAsync(wrong, "in", "in", ("passcode", "tern hook five oars"));
        Assert.Contains("That is not the passcode", await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(wrong, Now));

        using var browser = host.NewBrowser();
        var entered = await GardenHost.PostAsync(browser, "in", "in", ("passcode", GardenHost.Passcode));
        var cookie = Assert.Single(entered.Headers.GetValues("Set-Cookie"), line => line.StartsWith("stormclock-visit", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, Now));

        using var copy = host.NewBrowser();
        copy.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(copy, Now));
        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, "in", "out")).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(copy, Now));
    }

    [Fact]
    public async Task Passcode_Changed_EndsTheVisitsOfTheOneBefore()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = await host.EnterByPasscodeAsync();
        new PasscodeFile(host.Data.File(PasscodeFile.Name)).Set("quite another passcode");
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(browser, Now));
    }

    [Fact]
    public async Task Link_SentToAKnownAddress_OpensOnceAndByTheButtonOnly()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = host.NewBrowser();
        await GardenHost.PostAsync(browser, "in", "in", ("address", Gardener.ToUpperInvariant()));
        var link = await host.LinkAsync(Gardener);

        // A mail scanner opens it, again and again.
        using var scanner = host.NewBrowser();
        for (var look = 0; look < 3; look++) Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(scanner, link));
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(scanner, Now));

        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, link, link)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, Now));
        Assert.Equal(HttpStatusCode.Gone, await GardenHost.StatusAsync(browser, link));
        Assert.Equal(HttpStatusCode.Gone, (await GardenHost.PostAsync(browser, "in", link)).StatusCode);
    }

    [Fact]
    public async Task Link_AfterItsTime_OpensNothing()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = host.NewBrowser();
        await GardenHost.PostAsync(browser, "in", "in", ("address", Gardener));
        var link = await host.LinkAsync(Gardener);
        await host.Service.AdvanceAsync(SignInDesk.LinkLife);
        Assert.Equal(HttpStatusCode.Gone, await GardenHost.StatusAsync(browser, link));
    }

    [Fact]
    public async Task Ask_UnknownAddress_SaysTheSameAndSendsNothing()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = host.NewBrowser();
        var known = await Said("helper@practice.invalid");
        await host.LinkAsync("helper@practice.invalid");
        var before = host.Mail.Sent.Count;
        Assert.Equal(known, await Said("nobody@practice.invalid"));
        Assert.Equal(before, host.Mail.Sent.Count);

        async Task<string> Said(string address)
        {
            var answer = await GardenHost.PostAsync(browser, "in", "in", ("address", address));
            var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            return text[text.IndexOf("class=\"said\"", StringComparison.Ordinal)..text.IndexOf("<form", StringComparison.Ordinal)];
        }
    }

    [Fact]
    public async Task Ask_AgainAndAgain_FillsNobodysMailbox()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = host.NewBrowser();
        for (var time = 0; time < 8; time++) await GardenHost.PostAsync(browser, "in", "in", ("address", Gardener));
        await host.LinkAsync(Gardener);
        await host.Service.AdvanceAsync(Duration.FromMinutes(1));
        Assert.InRange(host.Mail.Sent.Count(letter => letter.Subject == "Link to sign in"), 1, 3);
    }

    [Fact]
    public async Task Passcode_GuessedByAProgram_IsStoppedAfterTenTries()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = host.NewBrowser();
        List<HttpStatusCode> answers = [];
        for (var guess = 0; guess < 14; guess++) answers.Add((await GardenHost.PostAsync(browser, "in", "in", ("passcode", $"guess number {guess:000}"))).StatusCode);
        Assert.Equal(10, answers.Count(answer => answer == HttpStatusCode.OK));
        Assert.Equal(4, answers.Count(answer => answer == HttpStatusCode.TooManyRequests));
    }

    [Fact]
    public async Task Helper_SeesTheirWorkAndNothingElse()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = await host.EnterAsync("helper@practice.invalid");
        var jobs = await GardenHost.ReadAsync(browser, $"g/{GardenHost.Garden.Id}/jobs");
        Assert.DoesNotContain("gardener@practice.invalid", jobs, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(browser, $"g/{GardenHost.Garden.Id}/plan.pdf"));
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(browser, "g/another/now"));
    }
}
