using System.Net;
using System.Text.RegularExpressions;
using StormClock.Service.Store;
using StormClock.Service.Tests.Visits;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Web.Api;

public partial class ApiKeyTests
{
    private const string Gardener = "gardener@practice.invalid";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Key_Made_IsShownOnceAndKeptAsAFingerprintOnly()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var browser = await host.EnterAsync(Gardener);
        var key = await ApiCaller.MakeKeyAsync(browser, "<shed> & board");

        var page = await GardenHost.ReadAsync(browser, "in");
        Assert.DoesNotContain(key, page, StringComparison.Ordinal);
        Assert.Contains("&lt;shed&gt; &amp; board: made 20 Sep 2027, not used yet", page, StringComparison.Ordinal);
        var kept = Assert.Single(host.Service.Store.Read(ApiKeys.All));
        Assert.Equal((Fingerprint.Of(key), new Visitor(VisitorKind.Mail, Gardener)), (kept.Id, kept.Owner));
        Assert.DoesNotContain(key, kept.ToString(), StringComparison.Ordinal);

        using var program = host.Program(key);
        await ApiCaller.ReadAsync(program, "gardens");
        Assert.Contains("last used 20 Sep 2027", await GardenHost.ReadAsync(browser, "in"), StringComparison.Ordinal);

        browser.DefaultRequestHeaders.AcceptLanguage.ParseAdd("es");
        Assert.Contains("usada por última vez el 20", WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, "in")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Key_TakenBackByItsOwner_OpensNothing()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var gardener = await host.EnterAsync(Gardener);
        using var helper = await host.EnterAsync("helper@practice.invalid");
        using var program = host.Program(await ApiCaller.MakeKeyAsync(gardener));
        var id = Id().Match(await GardenHost.ReadAsync(gardener, "in")).Groups[1].Value;

        Assert.DoesNotContain(id, await GardenHost.ReadAsync(helper, "in"), StringComparison.Ordinal);
        await GardenHost.PostAsync(helper, "in", "keys", ("take_back", id));
        await ApiCaller.ReadAsync(program, "gardens");

        var back = await GardenHost.PostAsync(gardener, "in", "keys", ("take_back", id));
        Assert.Equal((HttpStatusCode.SeeOther, "in"), (back.StatusCode, back.Headers.Location?.OriginalString));
        var refused = await program.GetAsync("gardens", Cancellation);
        Assert.Contains("taken back", await ApiCaller.ProblemAsync(HttpStatusCode.Unauthorized, refused), StringComparison.Ordinal);
        Assert.Contains("invalid_token", refused.Headers.WwwAuthenticate.Single().ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Key_MadeUnderThePasscode_DiesWithIt()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var keeper = await host.EnterByPasscodeAsync();
        using var gardener = await host.EnterAsync(Gardener);
        using var keepers = host.Program(await ApiCaller.MakeKeyAsync(keeper));
        using var gardeners = host.Program(await ApiCaller.MakeKeyAsync(gardener));
        await ApiCaller.ReadAsync(keepers, "gardens");

        new PasscodeFile(host.Data.File(PasscodeFile.Name)).Set("quite another passcode");
        await ApiCaller.ProblemAsync(HttpStatusCode.Unauthorized, await keepers.GetAsync("gardens", Cancellation));
        await ApiCaller.ReadAsync(gardeners, "gardens");

        // It goes at the next chance.
        await ApiCaller.MakeKeyAsync(gardener, "another");
        Assert.All(host.Service.Store.Read(ApiKeys.All), key => Assert.Equal(VisitorKind.Mail, key.Owner.Kind));
    }

    [Fact]
    public async Task Key_TheEleventh_IsNotMade()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var gardener = await host.EnterAsync(Gardener);
        using var keeper = await host.EnterByPasscodeAsync();
        for (var made = 0; made < KeyDesk.Most; made++) await ApiCaller.MakeKeyAsync(gardener, $"program {made}");
        var refused = await (await GardenHost.PostAsync(gardener, "in", "keys", ("name", "one more"))).Content.ReadAsStringAsync(Cancellation);
        Assert.Contains("as many keys as there may be", refused, StringComparison.Ordinal);
        Assert.Equal(10, host.Service.Store.Read(ApiKeys.All).Count);
        await ApiCaller.MakeKeyAsync(keeper);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("tab\tin it")]
    [InlineData("a name of more than sixty characters that nobody would want to read in a list")]
    public async Task Key_WithoutAFitName_IsNotMade(string name)
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var keeper = await host.EnterByPasscodeAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await GardenHost.PostAsync(keeper, "in", "keys", ("name", name))).StatusCode);
        Assert.Empty(host.Service.Store.Read(ApiKeys.All));
    }

    [Fact]
    public async Task Key_FormFromElsewhereOrOfAStranger_IsNotMade()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var keeper = await host.EnterByPasscodeAsync();
        using var form = new FormUrlEncodedContent([new("name", "board")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await keeper.PostAsync("keys", form, Cancellation)).StatusCode);
        using var stranger = host.NewBrowser();
        Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(stranger, "in", "keys", ("name", "board"))).StatusCode);
        Assert.Empty(host.Service.Store.Read(ApiKeys.All));
    }

    /// <summary>Whoever sits at the open box reads without a key, changes nothing, and is nobody to give a key to.</summary>
    [Fact]
    public async Task Box_WithoutPasscode_ReadsAndHoldsNoKey()
    {
        await using var host = await GardenHost.StartAsync();
        using var program = host.Program();
        using var browser = host.NewBrowser();
        await ApiCaller.ReadAsync(program, "gardens/tern-hook/plan");
        await ApiCaller.ProblemAsync(HttpStatusCode.Unauthorized, await ApiCaller.SendAsync(program, "gardens/tern-hook/in", """{"person":"helper"}"""));
        Assert.DoesNotContain("action=\"keys\"", await GardenHost.ReadAsync(browser, "in"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(browser, "keeper", "keys", ("name", "board"))).StatusCode);

        program.DefaultRequestHeaders.Host = "rebound.example";
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await program.GetAsync("gardens", Cancellation)).StatusCode);
    }

    [GeneratedRegex("name=\"take_back\" value=\"([0-9a-f]{32})\"")]
    private static partial Regex Id();
}
