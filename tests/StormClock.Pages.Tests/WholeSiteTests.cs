using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Pages.Tests.Served;
using StormClock.Service.Desk;
using StormClock.Service.Store;

namespace StormClock.Pages.Tests;

/// <summary>From an empty box over the survey and the practice storm to the last thing looked at, as somebody does it on the pages and nowhere else.</summary>
public class WholeSiteTests(InstalledBrowser browser)
{
    private static readonly Instant Calm = Instant.FromUtc(2027, 9, 18, 12, 0);
    private static readonly Instant Monday = Instant.FromUtc(2027, 9, 20, 12, 0);
    private static readonly Instant InTheStorm = Instant.FromUtc(2027, 9, 23, 4, 45);
    private static readonly Instant Afterwards = Instant.FromUtc(2027, 9, 24, 17, 45);

    /// <summary>Kind and count: all that is said of ten things.</summary>
    private static readonly (string Kind, int Count)[] Things =
    [
        ("potted_tree", 3), ("hanging", 4), ("furniture", 6), ("bin", 2), ("sign", 1),
        ("shade_sail", 1), ("potted_plant", 12), ("ornament", 2), ("swing", 1), ("loose_gear", 5),
    ];

    private static Screen ScreenOf(string way) => way switch { "touch" => Screens.Phone, "no script" => Screens.NoScript, _ => Screens.Desktop };

    private static Hands HandsOf(string way, IPage page) => way == "keys" ? new Keys(page) : new Fingers(page, way == "touch");

    [Theory]
    [InlineData("touch")]
    [InlineData("no script")]
    [InlineData("keys")]
    public async Task Site_FromAnEmptyBoxToTheLastLook_DoesTheWholeJob(string way)
    {
        await using var storm = await ServedStorm.StartAsync(Calm, new() { Practice = false, Gardens = [] });
        await browser.VisitAsync(ScreenOf(way), async visit =>
        {
            var hands = HandsOf(way, visit.Page);
            await visit.GoAsync(storm.At("/"));
            await SetUpAsync(hands);
            await SurveyAsync(hands);
            await WorkAsync(hands, storm);
            await SitItOutAsync(hands, storm);
            await LookAfterAsync(hands, storm);
        });

        AssertToldInOrder(storm);
    }

    private static async Task SetUpAsync(Hands hands)
    {
        await hands.PressAsync("a[href$='start']");
        await hands.FillAsync("#garden", "Heron Reach");
        await hands.FillAsync("#latitude", "29.72");
        await hands.FillAsync("#longitude", "-84.98");
        await hands.ChooseAsync("#zone", "America/New_York");
        await hands.FillAsync("#person", "Maris");
        await hands.FillAsync("#email", "maris@example.org");
        await hands.FillAsync("#helper", "Joss");
        await hands.FillAsync("#area", "Yard");
        await hands.PressAsync("form[action='start'] button.first");
        await hands.PressAsync("a[href*='walk']");
    }

    private static async Task SurveyAsync(Hands hands)
    {
        if (!hands.Page.Url.EndsWith("/walk/yard", StringComparison.Ordinal)) await hands.PressAsync("a[href$='walk/yard']");
        foreach (var (kind, count) in Things)
        {
            await hands.ChooseAsync("#kind", kind);
            await hands.FillAsync("#count", $"{count}");
            await hands.PressAsync("form[action$='/add'] button.first");
            Assert.Equal(1, await hands.Page.Locator(".said").CountAsync());
        }
    }

    /// <summary>The storm comes near: what is asked is of use, and all of it is done.</summary>
    private static async Task WorkAsync(Hands hands, ServedStorm storm)
    {
        await storm.AdvanceToAsync(Monday);
        await hands.PressAsync("a[href$='now']");
        Assert.Equal(Stage.MainWork, StageOf(storm));
        AssertUseful(storm);
        await hands.PressAsync("a[href='jobs']");
        var all = await OpenJobs(hands).CountAsync();
        Assert.InRange(all, Things.Length - 1, 30);
        for (var open = all; open > 0; open--)
        {
            await hands.PressAsync(Done);
            Assert.Equal(open - 1, await OpenJobs(hands).CountAsync());
        }

        Assert.Equal(all, storm.Answers("heron-reach").Count(state => state.Progress == JobProgress.Done));
    }

    /// <summary>Whatever the storm would move has work, by the people there are, before the hour at which such work stops.</summary>
    private static void AssertUseful(ServedStorm storm)
    {
        var book = storm.Services.GetRequiredService<GardenShelf>().Find("heron-reach")!;
        Assert.Equal(Things.Order(), book.Items.Select(item => (item.Kind, item.Count)).Order());
        var plan = storm.Services.GetRequiredService<GardenDesk>().Latest["heron-reach"].Plan!;
        Assert.Empty(plan.LeftOut);
        Assert.Equal(book.Items.Select(item => item.Id).Except(["ornament"]).Order(), plan.Jobs.Select(planned => planned.Job.ItemId).Distinct().Order());
        Assert.All(plan.Jobs, planned =>
        {
            Assert.True(planned.End <= plan.WorkStops[planned.Job.Class].Earliest);
            Assert.NotEmpty(planned.People);
        });
    }

    private static async Task SitItOutAsync(Hands hands, ServedStorm storm)
    {
        await storm.AdvanceToAsync(InTheStorm);
        await hands.PressAsync("a[href$='now']");
        Assert.Equal(Stage.GardenClosed, StageOf(storm));
        Assert.Equal(0, await OpenJobs(hands).CountAsync());
        const string isIn = "button[value^='done in:']";
        for (var people = 2; people > 0; people--)
        {
            Assert.Equal(people, await hands.Page.Locator(isIn).CountAsync());
            await hands.PressAsync(isIn);
        }
    }

    private static async Task LookAfterAsync(Hands hands, ServedStorm storm)
    {
        await storm.AdvanceToAsync(Afterwards);
        await hands.PressAsync("a[href$='after']");
        Assert.Equal(Stage.Recheck, StageOf(storm));
        await hands.PressAsync("a[href^='after/']");
        await hands.FillAsync("#note", "One branch broke.");
        await hands.PressAsync("button[value^='damaged ']");
        const string held = "button[value^='held ']";
        while (await hands.Page.Locator(held).CountAsync() > 0) await hands.PressAsync(held);
        while (await OpenJobs(hands).CountAsync() > 0) await hands.PressAsync(Done);
        Assert.Contains("One branch broke.", await hands.ReadAsync());

        await hands.PressAsync("a[href$='storms']");
        Assert.Contains("Storms", await hands.Page.Locator("h1").InnerTextAsync());
        var outcomes = storm.Store.Read(reader => Outcomes.OfGarden(reader, "heron-reach"));
        Assert.Equal(Things.Length, outcomes.Count);
        Assert.Single(outcomes, outcome => outcome.Outcome.Kind == OutcomeKind.Damaged);
    }

    /// <summary>The letters of the way: work, then that it is over, then the look afterwards; no word of work that was done.</summary>
    private static void AssertToldInOrder(ServedStorm storm) => Assert.Equal(
        [
            "Stop by about Wed 11:45 EDT: Slow work, Heron Reach",
            "Stop by Wed 06:15 EDT: Main work, Heron Reach",
            "Stop by Wed 11:45 EDT: the day's work, Heron Reach",
            "Stop by Wed 21:30 EDT: Last round, Heron Reach",
            "Stop now: Garden closed, Heron Reach",
            "Recheck: look first, lift nothing yet, Heron Reach",
        ],
        storm.Mails.Select(mail => mail.Message.Subject));

    private const string Done = "button[value^='done ']:not([value^='done in:'])";

    private static ILocator OpenJobs(Hands hands) => hands.Page.Locator(Done);

    private static Stage StageOf(ServedStorm storm) => storm.Services.GetRequiredService<GardenDesk>().Latest["heron-reach"].Standing.Stage.Stage;
}
