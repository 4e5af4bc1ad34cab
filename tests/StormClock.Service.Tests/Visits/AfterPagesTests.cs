using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using SkiaSharp;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Core.Units;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Photos;
using StormClock.Service.Tests.Photos;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Visits;

/// <summary>Photos with what became of things, and where a storm is that has turned away.</summary>
public sealed partial class AfterPagesTests
{
    private const string After = "g/tern-hook/after";

    private static readonly byte[] Photo = DrawnPictures.OfOneColour(800, 600, SKColors.Teal, SKEncodedImageFormat.Jpeg);

    private static Item Item => GardenHost.Garden.Items[0];

    private static string Page => $"{After}/{Item.Id}";

    [Fact]
    public async Task Photo_OfAnOutcome_IsSentShownAndTakenAway()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var gardener = await host.EnterAsync("gardener@practice.invalid");
        using var helper = await host.EnterAsync("helper@practice.invalid");
        Assert.Equal(HttpStatusCode.Conflict, (await SendAsync(gardener, Photo)).StatusCode);
        await ToRecheckAsync(host);

        // First what became of it: a photo alone says nothing.
        Assert.DoesNotContain("type=\"file\"", await GardenHost.ReadAsync(gardener, Page), StringComparison.Ordinal);
        var early = await SendAsync(gardener, Photo);
        Assert.Equal(HttpStatusCode.Conflict, early.StatusCode);
        Assert.Contains("Say first what became of it", await BodyAsync(early), StringComparison.Ordinal);
        var pressed = await GardenHost.PostAsync(gardener, After, "g/tern-hook/outcome", ("press", $"leaning {Item.Id}"));
        Assert.Contains($"href=\"after/{Item.Id}#photos\"", await GardenHost.ReadAsync(gardener, $"g/tern-hook/{pressed.Headers.Location}"), StringComparison.Ordinal);

        for (var time = 0; time < 2; time++) Assert.EndsWith($"after/{Item.Id}#photos", (await SendAsync(gardener, Photo, "same")).Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(helper, Photo)).StatusCode);
        var (hers, his) = (NotesOf(host).Single(note => note.By == "gardener"), NotesOf(host).Single(note => note.By == "helper"));

        var answer = await gardener.GetAsync(After, TestContext.Current.CancellationToken);
        Assert.EndsWith("img-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        var page = WebUtility.HtmlDecode(await BodyAsync(answer));
        Assert.Contains($"<a href=\"photo/{hers.FileName}\"><img src=\"photo/{hers.FileName}/small\" alt=\"Photo of {Item.Name}, sent ", page, StringComparison.Ordinal);
        Assert.Contains(his.FileName, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.InRange(await PackedBytesAsync(gardener), 1, 60 * 1024);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(helper, $"g/tern-hook/photo/{hers.FileName}"));
        Assert.DoesNotContain(hers.FileName, await GardenHost.ReadAsync(gardener, $"g/tern-hook/walk/{Item.AreaId}/{Item.Id}"), StringComparison.Ordinal);

        // Each their own; the gardener all.
        Assert.Single(AwayButton().Matches(await GardenHost.ReadAsync(helper, Page)));
        await GardenHost.PostAsync(helper, Page, $"{Page}/photo-away", ("press", hers.FileName));
        Assert.Equal(2, NotesOf(host).Count);
        foreach (var name in new[] { hers.FileName, his.FileName }) await GardenHost.PostAsync(gardener, Page, $"{Page}/photo-away", ("press", name));
        Assert.Empty(NotesOf(host));
        Assert.Empty(Directory.GetFiles(host.Data.File("photos/tern-hook")));
    }

    /// <summary>By the same way as every other photo: nothing is kept, the reason is told, and the outcome stands.</summary>
    [Fact]
    public async Task Photo_OfAnOutcomeThatCannotBeTaken_IsToldWhyAndTheOutcomeStays()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        await ToRecheckAsync(host);
        await GardenHost.PostAsync(browser, After, "g/tern-hook/outcome", ("press", $"leaning {Item.Id}"));
        foreach (var (bytes, told) in new (byte[], string)[] { (HandMadePng.Of(60_000, 60_000), "too many pixels"), (Encoding.UTF8.GetBytes("<script>"), "not a photo"), (new byte[20 << 20], "larger than 12 MB") })
        {
            var page = WebUtility.HtmlDecode(await BodyAsync(await SendAsync(browser, bytes)));
            Assert.Contains(told, page, StringComparison.Ordinal);
            Assert.Contains("type=\"file\"", page, StringComparison.Ordinal);
        }

        Assert.Empty(NotesOf(host));
        Assert.False(Directory.Exists(host.Data.File("photos/tern-hook")));
        Assert.Contains($"after/{Item.Id}\">{Item.Name}", WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, After)), StringComparison.Ordinal);
    }

    /// <summary>The practice storm, of which every advisory after the first day is 15 degrees farther west.</summary>
    [Fact]
    public async Task Whereabouts_AfterAStandDown_IsOneLineBelowTheCautions()
    {
        var turns = Instant.FromUtc(2027, 9, 20, 12, 0);
        List<(Instant Issued, RawMessage Message)> messages =
        [
            .. PracticeStorm.Messages.Where(message => message.Message.Name.EndsWith(".txt", StringComparison.Ordinal))
                .Select(message => message.Issued < turns ? message : (message.Issued, new RawMessage(message.Message.Name, Encoding.UTF8.GetBytes(FartherWest(Encoding.UTF8.GetString(message.Message.Bytes.Span)))))),
        ];
        await using var host = await GardenHost.StartAsync(messages: messages);
        using var browser = host.NewBrowser();
        Assert.DoesNotContain("last known at", await GardenHost.ReadAsync(browser, After), StringComparison.Ordinal);

        for (var time = 0; Standing(host).StoodDown is null && time < 96; time++) await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.NotNull(Standing(host).StoodDown);

        var page = WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, After)).Replace('\u00a0', ' ');
        var line = Line().Match(page);
        Assert.True(line.Success, page);
        Assert.InRange(page.IndexOf("class=\"cautions\"", StringComparison.Ordinal), 0, line.Index);

        var newest = Encoding.UTF8.GetString(messages.Last(message => message.Issued <= host.Service.Now).Message.Bytes.Span);
        var centre = Centre().Match(newest);
        Assert.Equal((centre.Groups["lat"].Value, centre.Groups["lon"].Value), (line.Groups["lat"].Value, line.Groups["lon"].Value));
        var site = GardenHost.Garden.Sites.Single(site => site.Name == line.Groups["site"].Value);
        var at = new GeoPoint(Degrees(centre.Groups["lat"]), -Degrees(centre.Groups["lon"]));
        Assert.InRange(Degrees(line.Groups["miles"]) - GreatCircle.DistanceNmi(site.At, at) * 1.150779, -2.6, 2.6);
        Assert.Equal("southwest", line.Groups["way"].Value[^9..]);
    }

    private static double Degrees(Group text) => double.Parse(text.ValueSpan, CultureInfo.InvariantCulture);

    private static string FartherWest(string text) =>
        West().Replace(text, lon => string.Create(CultureInfo.InvariantCulture, $"{double.Parse(lon.Groups[1].ValueSpan, CultureInfo.InvariantCulture) + 15:0.0}W"));

    private static StageStanding Standing(GardenHost host) => host.Service.Services.GetRequiredService<GardenDesk>().Latest["tern-hook"].Standing.Stage;

    private static IReadOnlyList<PhotoNote> NotesOf(GardenHost host) =>
        [.. host.Service.Services.GetRequiredService<PhotoDesk>().OfOutcomes("tern-hook", Standing(host).EpisodeId!)[Item.Id]];

    private static async Task ToRecheckAsync(GardenHost host)
    {
        while (Standing(host).Stage != Stage.Recheck && host.Service.Now < Instant.FromUtc(2027, 9, 27, 0, 0)) await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Equal(Stage.Recheck, Standing(host).Stage);
    }

    private static async Task<HttpResponseMessage> SendAsync(HttpClient browser, byte[] photo, string? once = null)
    {
        var hidden = HiddenField().Match(await GardenHost.ReadAsync(browser, "g/tern-hook/jobs"));
        using var form = new MultipartFormDataContent
        {
            { new StringContent(hidden.Success ? hidden.Groups[1].Value : HiddenField().Match(await GardenHost.ReadAsync(browser, Page)).Groups[1].Value), "__RequestVerificationToken" },
            { new StringContent(once ?? Guid.NewGuid().ToString("N")), "once" },
            { new ByteArrayContent(photo), "photo", "../after.jpg" },
        };
        return await browser.PostAsync($"{Page}/photo", form, TestContext.Current.CancellationToken);
    }

    private static async Task<int> PackedBytesAsync(HttpClient browser)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, After) { Headers = { AcceptEncoding = { new("gzip") } } };
        using var answer = await browser.SendAsync(request, TestContext.Current.CancellationToken);
        return (await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length;
    }

    private static Task<string> BodyAsync(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("name=\"press\" value=\"[0-9a-f]{32}\"")]
    private static partial Regex AwayButton();

    [GeneratedRegex(@"(\d+\.\d)W\b")]
    private static partial Regex West();

    [GeneratedRegex(@"CENTER LOCATED NEAR (?<lat>[\d.]+)N\s+(?<lon>[\d.]+)W AT")]
    private static partial Regex Centre();

    [GeneratedRegex(@"THESSALY: the centre was last known at (?<lat>[\d.]+)° N, (?<lon>[\d.]+)° W, about (?<miles>\d+) miles (?<way>[a-z-]+) of (?<site>[^(]+) \([^)]+\)\. A storm can turn again; official word goes before this line\.")]
    private static partial Regex Line();
}
