using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Visits;

public sealed partial class PlotMapTests : IAsyncLifetime
{
    private const string Map = "g/tern-hook/plot-map";

    private readonly TempFolder gardens = new();
    private GardenHost host = null!;
    private HttpClient browser = null!;

    private string File => gardens.File("tern-hook.yaml");

    private GardenBook Book => GardenFiles.Read(File).Value!;

    private PlotRect? Porch => Book.Areas.Single(area => area.Id == "porch").Plot;

    public async ValueTask InitializeAsync()
    {
        // As it is before anybody has placed anything.
        var text = Places().Replace(await System.IO.File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml")), "");
        await System.IO.File.WriteAllTextAsync(File, text.Replace("practice: true", "practice: false", StringComparison.Ordinal));
        host = await GardenHost.StartAsync(shelf: new GardenShelf(gardens.Path));
        browser = host.NewBrowser();
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await host.DisposeAsync();
        gardens.Dispose();
    }

    [Fact]
    public async Task Map_NothingPlaced_ListsAllOfTheSiteAsNotPlaced()
    {
        foreach (var site in Book.Sites)
        {
            var page = WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, $"{Map}?site={site.Id}"));
            Assert.Contains("Not placed", page, StringComparison.Ordinal);
            foreach (var area in Book.Areas)
            {
                Assert.Equal(area.SiteId == site.Id, page.Contains($"place=area/{area.Id}\"", StringComparison.Ordinal));
                Assert.All(Book.Items.Where(item => item.AreaId == area.Id), item => Assert.Equal(area.SiteId == site.Id, page.Contains($"g/tern-hook/walk/{area.Id}/{item.Id}\"".Replace("g/tern-hook/", "", StringComparison.Ordinal), StringComparison.Ordinal)));
            }
        }
    }

    [Fact]
    public async Task Map_Placed_ShowsDrawingAndListWithStateWords()
    {
        var item = Book.Items.First(item => item.AreaId == "porch" && item.Jobs.Count > 0);
        await FieldsAsync("area/porch", ("left", "2"), ("top", "1"), ("width", "6"), ("depth", "4"));
        await FieldsAsync($"item/{item.Id}", ("x", "3.5"), ("y", "2"));

        var page = await GardenHost.ReadAsync(browser, $"{Map}?site=house");
        var drawings = Drawing().Matches(page);
        Assert.Equal(2, drawings.Count);
        Assert.All(drawings, drawing =>
        {
            var svg = XElement.Parse(drawing.Value);
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.NotEmpty(svg.Element("title")!.Value);
            Assert.Contains("One area and one thing are placed, 1 with open work", svg.Element("desc")!.Value, StringComparison.Ordinal);
            Assert.Contains(svg.Elements("text"), text => text.Value.StartsWith("A Porch", StringComparison.Ordinal));
        });
        Assert.Contains("Dark square: open work", page, StringComparison.Ordinal);
        Assert.Contains("6 m wide, 4 m deep.", page, StringComparison.Ordinal);
        Assert.Matches($"walk/porch/{item.Id}\">[^<]+</a>\\s*<span>open work</span>", page);
        Assert.Contains("One square of the grid is 2 m, about 7 ft.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);

        foreach (var job in item.Jobs) await GardenHost.PostAsync(browser, "g/tern-hook/jobs", "g/tern-hook/answer", ("press", $"done {job.Id}"), ("back", "jobs"));
        Assert.Matches($"walk/porch/{item.Id}\">[^<]+</a>\\s*<span>done</span>", await GardenHost.ReadAsync(browser, $"{Map}?site=house"));
    }

    /// <summary>Pictures are let in on these pages only, and from here only.</summary>
    [Fact]
    public async Task Policy_LetsInOwnPicturesWhereThereAreAny()
    {
        Assert.EndsWith("img-src 'self'", await PolicyAsync(Map), StringComparison.Ordinal);
        Assert.EndsWith("img-src 'self'", await PolicyAsync("g/tern-hook/walk"), StringComparison.Ordinal);
        Assert.DoesNotContain("script-src", await PolicyAsync(Map), StringComparison.Ordinal);
        Assert.DoesNotContain("img-src", await PolicyAsync("g/tern-hook/now"), StringComparison.Ordinal);
    }

    /// <summary>First the upper left corner, then the lower right: 12 m over 286 px of a phone's drawing that begins at 34, 26.</summary>
    [Fact]
    public async Task Press_TwoCornersOfAnArea_AreItsRectangle()
    {
        var near = await PressAsync("area/porch", 82, 74, "120x120");
        Assert.Equal(HttpStatusCode.SeeOther, near.StatusCode);
        Assert.EndsWith("plot-map?site=house&place=area/porch&corner=far&told=1", near.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(new PlotRect(20, 20, 30, 20), Porch);

        var far = await PressAsync("area/porch", 225, 145, "120x120", ("corner", "far"));
        Assert.EndsWith("place=area/porch&told=1", far.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(new PlotRect(20, 20, 60, 30), Porch);

        await PressAsync("area/porch", 34, 26, "120x120");
        Assert.Equal(new PlotRect(0, 0, 60, 30), Porch);

        // A second corner to the left of the first and above it: the rectangle lies between them all the same.
        await FieldsAsync("area/porch", ("left", "8"), ("top", "8"), ("width", "1"), ("depth", "1"));
        await PressAsync("area/porch", 82, 74, "120x120", ("corner", "far"));
        Assert.Equal(new PlotRect(20, 20, 60, 60), Porch);
    }

    [Fact]
    public async Task Press_OnTheWideDrawing_IsMeasuredByItsOwnSize()
    {
        var item = Book.Items.First(item => item.AreaId == "porch");
        Assert.Equal(HttpStatusCode.SeeOther, (await PressAsync($"item/{item.Id}", "wide", "459", "26", "200x120")).StatusCode);
        Assert.Equal(new PlotSpot(100, 0), Book.Items.Single(known => known.Id == item.Id).Spot);
    }

    /// <summary>A press by key comes as 0, 0 and means no place. Whatever else is no press changes nothing.</summary>
    [Theory]
    [InlineData("0", "0", "120x120")]
    [InlineData("-5", "30", "120x120")]
    [InlineData("9999", "30", "120x120")]
    [InlineData("99999999999999999999", "30", "120x120")]
    [InlineData("1e2", "30", "120x120")]
    [InlineData("", "", "120x120")]
    [InlineData("<script>", "30", "120x120")]
    [InlineData("50", "50", "")]
    [InlineData("50", "50", "0x0")]
    [InlineData("50", "50", "99999x99999")]
    [InlineData("50", "50", "-120x120")]
    public async Task Press_ThatIsNoPlace_IsRefusedWithTheOtherWay(string x, string y, string frame)
    {
        var before = await TextAsync();
        var page = await BodyAsync(await PressAsync("area/porch", "narrow", x, y, frame));
        Assert.Contains("press on the grid itself", page, StringComparison.Ordinal);
        Assert.Contains("name=\"left\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Equal(before, await TextAsync());
    }

    [Theory]
    [InlineData("-1", "0", "3", "2", "From the left: write metres from 0 to 1000")]
    [InlineData("1,5", "0", "3", "2", "not '1,5'")]
    [InlineData("", "0", "3", "2", "not ''")]
    [InlineData("0", "0", "3", "0", "outside of the grid")]
    [InlineData("0", "0", "2.55", "2", "Width: write metres")]
    [InlineData("999", "0", "2", "2", "outside of the grid")]
    [InlineData("0", "NaN", "2", "2", "From the top")]
    [InlineData("0", "0", "2], id: [evil", "2", "Width: write metres")]
    [InlineData("0", "0", "<b>2</b>", "2", "Width: write metres")]
    public async Task Fields_WhatABookMayNotSay_AreRefusedAndKeepWhatWasTyped(string left, string top, string width, string depth, string told)
    {
        var before = await TextAsync();
        var page = await BodyAsync(await FieldsAsync("area/porch", ("left", left), ("top", top), ("width", width), ("depth", depth)));
        Assert.Contains(told, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", page, StringComparison.Ordinal);
        Assert.Contains($"name=\"width\" inputmode=\"decimal\" maxlength=\"8\" value=\"{width}\"", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Equal(before, await TextAsync());
    }

    [Fact]
    public async Task Steps_EachWay_MoveByTheirMetresAndStopAtTheGridsEnd()
    {
        await FieldsAsync("area/porch", ("left", "0.5"), ("top", "1"), ("width", "1"), ("depth", "2"));
        (string Press, PlotRect Becomes)[] steps =
        [
            ("right 10", new(15, 10, 10, 20)), ("down 1", new(15, 11, 10, 20)), ("wider 10", new(15, 11, 20, 20)), ("deeper 1", new(15, 11, 20, 21)),
            ("left 1", new(14, 11, 20, 21)), ("up 10", new(14, 1, 20, 21)), ("narrower 1", new(14, 1, 19, 21)), ("shallower 10", new(14, 1, 19, 11)),
        ];
        foreach (var (press, becomes) in steps)
        {
            Assert.Equal(HttpStatusCode.SeeOther, (await StepAsync("area/porch", press)).StatusCode);
            Assert.Equal(becomes, Porch);
        }

        foreach (var press in new[] { "up 10", "narrower 100", "shallower 10000", "left 5", "sideways 1", "left", "left 1 1", "" })
        {
            Assert.Equal(HttpStatusCode.OK, (await StepAsync("area/porch", press)).StatusCode);
            Assert.Equal(steps[^1].Becomes, Porch);
        }
    }

    [Fact]
    public async Task Steps_OfAnItem_MoveItAndNothingElse()
    {
        var item = Book.Items.First(item => item.AreaId == "porch");
        Assert.Contains("not placed yet", await BodyAsync(await StepAsync($"item/{item.Id}", "left 1")), StringComparison.Ordinal);
        await FieldsAsync($"item/{item.Id}", ("x", "1"), ("y", "1"));
        await StepAsync($"item/{item.Id}", "right 1");
        Assert.Equal(HttpStatusCode.OK, (await StepAsync($"item/{item.Id}", "wider 1")).StatusCode);
        var now = Book.Items.Single(known => known.Id == item.Id);
        Assert.Equal(new PlotSpot(11, 10), now.Spot);
        Assert.Equal(item.Jobs.Select(job => job.Id), now.Jobs.Select(job => job.Id));
    }

    /// <summary>By each of the ways to move an area: a press, its metres, a step. Its things keep their places in it; others stay where they are.</summary>
    [Fact]
    public async Task Move_OfAnArea_TakesItsPlacedThingsAlong()
    {
        var (mine, yard) = (Book.Items.Where(item => item.AreaId == "porch").ToList(), Book.Items.First(item => item.AreaId == "kitchen-yard"));
        await FieldsAsync("area/porch", ("left", "1"), ("top", "1"), ("width", "4"), ("depth", "3"));
        await FieldsAsync($"item/{mine[0].Id}", ("x", "2"), ("y", "1.5"));
        await FieldsAsync($"item/{yard.Id}", ("x", "2"), ("y", "2"));

        await StepAsync("area/porch", "right 10");
        Assert.Equal(new PlotSpot(30, 15), SpotOf(mine[0]));
        await FieldsAsync("area/porch", ("left", "6.5"), ("top", "3"), ("width", "4"), ("depth", "3"));
        Assert.Equal(new PlotSpot(75, 35), SpotOf(mine[0]));
        await PressAsync("area/porch", 82, 74, "120x120");
        Assert.Equal((new PlotRect(20, 20, 40, 30), new PlotSpot(30, 25)), (Porch, SpotOf(mine[0])));

        Assert.Equal(new PlotSpot(20, 20), SpotOf(yard));
        Assert.All(mine.Skip(1), item => Assert.Null(SpotOf(item)));
    }

    [Fact]
    public async Task Move_ThereAndBack_LeavesTheFileAsItWas()
    {
        var item = Book.Items.First(item => item.AreaId == "porch");
        await FieldsAsync("area/porch", ("left", "1"), ("top", "1"), ("width", "4"), ("depth", "3"));
        await FieldsAsync($"item/{item.Id}", ("x", "2"), ("y", "1.5"));
        var before = await TextAsync();
        await StepAsync("area/porch", "down 10");
        Assert.NotEqual(before, await TextAsync());
        await StepAsync("area/porch", "up 10");
        Assert.Equal(before, await TextAsync());
        Assert.Empty(Directory.GetFiles(gardens.Path, "*.bak"));
    }

    /// <summary>A new size is none of a move, whichever corner gives it; so is taking it off.</summary>
    [Fact]
    public async Task Resize_OfAnArea_LeavesItsThingsWhereTheyAre()
    {
        var item = Book.Items.First(item => item.AreaId == "porch");
        await FieldsAsync($"item/{item.Id}", ("x", "2"), ("y", "1.5"));
        await FieldsAsync("area/porch", ("left", "1"), ("top", "1"), ("width", "4"), ("depth", "3"));
        foreach (var press in new[] { "wider 10", "deeper 10", "narrower 1", "shallower 1" }) await StepAsync("area/porch", press);
        await FieldsAsync("area/porch", ("left", "0.5"), ("top", "0"), ("width", "6"), ("depth", "5"));
        await PressAsync("area/porch", 34, 26, "120x120", ("corner", "far"));
        Assert.Equal(new PlotRect(0, 0, 5, 1), Porch);
        await StepAsync("area/porch", "off");
        Assert.Equal(new PlotSpot(20, 15), SpotOf(item));
    }

    /// <summary>Nothing of a move is taken where the area was changed meanwhile; where only a thing was, it goes on from there.</summary>
    [Fact]
    public async Task Move_FileEditedByHandMeanwhile_MovesAllOrNothing()
    {
        var item = Book.Items.First(item => item.AreaId == "porch");
        await FieldsAsync("area/porch", ("left", "1"), ("top", "1"), ("width", "4"), ("depth", "3"));
        await FieldsAsync($"item/{item.Id}", ("x", "2"), ("y", "1.5"));
        var mark = await MarkAsync("area/porch");

        await System.IO.File.WriteAllTextAsync(File, (await TextAsync()).Replace("spot: [2, 1.5]", "spot: [3, 1.5]", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.SeeOther, (await PostAsync("area/porch", ("once", Once()), ("mark", mark), ("press", "right 10"))).StatusCode);
        Assert.Equal(new PlotSpot(40, 15), SpotOf(item));

        var before = await TextAsync();
        Assert.Contains("Somebody changed this meanwhile", await BodyAsync(await PostAsync("area/porch", ("once", Once()), ("mark", mark), ("press", "right 1"))), StringComparison.Ordinal);
        Assert.Equal(before, await TextAsync());
    }

    [Fact]
    public async Task Off_TakenOffTheDrawing_LeavesTheFileAsItWas()
    {
        var before = await TextAsync();
        await FieldsAsync("area/porch", ("left", "0"), ("top", "0"), ("width", "3"), ("depth", "2"));
        Assert.NotEqual(before, await TextAsync());
        var off = await StepAsync("area/porch", "off");
        Assert.EndsWith("plot-map?site=house&told=1", off.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, await TextAsync());
        Assert.DoesNotContain("role=\"status\"", await GardenHost.ReadAsync(browser, $"{Map}?site=house&told=1"), StringComparison.Ordinal);
    }

    /// <summary>The answer got lost on the way, so the same form comes again.</summary>
    [Fact]
    public async Task Step_SameFormTwice_IsTakenOnce()
    {
        await FieldsAsync("area/porch", ("left", "1"), ("top", "0"), ("width", "3"), ("depth", "2"));
        var mark = await MarkAsync("area/porch");
        for (var time = 0; time < 2; time++) Assert.Equal(HttpStatusCode.SeeOther, (await PostAsync("area/porch", ("once", "abc"), ("mark", mark), ("press", "right 10"))).StatusCode);
        Assert.Equal(20, Porch!.LeftDm);
    }

    /// <summary>The file is edited by hand while the page is open: that stays, and it is shown.</summary>
    [Fact]
    public async Task Place_FileEditedByHandMeanwhile_IsShownNeverOverwritten()
    {
        await FieldsAsync("area/porch", ("left", "1"), ("top", "0"), ("width", "3"), ("depth", "2"));
        var mark = await MarkAsync("area/porch");
        await System.IO.File.WriteAllTextAsync(File, (await TextAsync()).Replace("plot: [1, 0, 3, 2]", "plot: [7, 0, 3, 2]", StringComparison.Ordinal), TestContext.Current.CancellationToken);

        foreach (var fields in new (string, string)[][] { [("press", "right 10")], [("press", "off")], [("press", "fields"), ("left", "5"), ("top", "5"), ("width", "5"), ("depth", "5")], [("narrow.x", "50"), ("narrow.y", "50"), ("frame", "120x120")] })
        {
            var page = await BodyAsync(await PostAsync("area/porch", [("once", Once()), ("mark", mark), .. fields]));
            Assert.Contains("Somebody changed this meanwhile", page, StringComparison.Ordinal);
            Assert.Equal(new PlotRect(70, 0, 30, 20), Porch);
            Assert.Contains(fields[0].Item2 == "fields" ? "value=\"5\"" : "value=\"7\"", page, StringComparison.Ordinal);
            Assert.NotEqual(mark, Mark().Match(page).Groups[1].Value);
            Assert.Equal(HttpStatusCode.OK, (await PostAsync("area/porch", ("once", Once()), ("mark", "no mark"), ("press", "left 1"))).StatusCode);
        }

        Assert.Equal(HttpStatusCode.SeeOther, (await StepAsync("area/porch", "right 10")).StatusCode);
        Assert.Equal(80, Porch!.LeftDm);
    }

    [Theory]
    [InlineData("area/no-such")]
    [InlineData("item/../../x")]
    [InlineData("site/house")]
    [InlineData("area/porch/porch")]
    [InlineData("")]
    public async Task Place_WhatIsNotInTheBook_IsNoPage(string token)
    {
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(browser, $"{Map}?place={Uri.EscapeDataString(token)}"));
        var posted = await PostAsync(token, ("once", Once()), ("mark", "x"), ("press", "left 1"), ("site", "no-such"));
        Assert.Equal(HttpStatusCode.BadRequest, posted.StatusCode);
    }

    [Theory]
    [InlineData("site=no-such&layout=wide&frame=120x120")]
    [InlineData("site=house&layout=huge&frame=120x120")]
    [InlineData("site=house&layout=wide&frame=99999x1")]
    [InlineData("site=house&layout=wide")]
    public async Task Svg_OddlyAskedFor_IsNoPage(string query) => Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(browser, $"g/tern-hook/plot-map.svg?{query}"));

    [Fact]
    public async Task Svg_ForPressing_HasTheSizeThatThePageGivesIt()
    {
        var page = WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, $"{Map}?place=area/porch"));
        var images = Image().Matches(page);
        Assert.Equal(2, images.Count);
        foreach (Match image in images)
        {
            var answer = await browser.GetAsync($"g/tern-hook/{image.Groups["src"].Value}", TestContext.Current.CancellationToken);
            Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType!.MediaType);
            var svg = XElement.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            Assert.Equal((image.Groups["width"].Value, image.Groups["height"].Value), (svg.Attribute("width")!.Value, svg.Attribute("height")!.Value));
        }
    }

    [Fact]
    public async Task Map_NotForHelpersNorStrangers()
    {
        await using var guarded = await GardenHost.StartAsync(passcode: true);
        using var stranger = guarded.NewBrowser();
        using var helper = await guarded.EnterAsync("helper@practice.invalid");
        using var gardener = await guarded.EnterAsync("gardener@practice.invalid");
        foreach (var page in new[] { Map, "g/tern-hook/plot-map.svg?layout=wide&frame=120x120" })
        {
            Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(stranger, page));
            Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(helper, page));
            Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(gardener, page));
        }

        foreach (var action in new[] { "place", "sketch", "sketch-change" })
            Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(helper, "g/tern-hook/now", $"{Map}/{action}", ("place", "area/porch"), ("once", "x"), ("press", "off"))).StatusCode);
    }

    private PlotSpot? SpotOf(Item item) => Book.Items.Single(known => known.Id == item.Id).Spot;

    private static string Once() => Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture);

    private Task<string> TextAsync() => System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);

    private static Task<string> BodyAsync(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private async Task<string> PolicyAsync(string page) => (await browser.GetAsync(page, TestContext.Current.CancellationToken)).Headers.GetValues("Content-Security-Policy").Single();

    private async Task<string> MarkAsync(string token) => Mark().Match(await GardenHost.ReadAsync(browser, $"{Map}?place={token}")).Groups[1].Value;

    private Task<HttpResponseMessage> PostAsync(string token, params (string Name, string Value)[] fields) =>
        GardenHost.PostAsync(browser, Map, $"{Map}/place", [("place", token), .. fields.Any(field => field.Name == "site") ? Array.Empty<(string, string)>() : [("site", "house")], .. fields]);

    private async Task<HttpResponseMessage> FieldsAsync(string token, params (string Name, string Value)[] fields) =>
        await PostAsync(token, [("once", Once()), ("mark", await MarkAsync(token)), ("press", "fields"), .. fields]);

    private async Task<HttpResponseMessage> StepAsync(string token, string press) => await PostAsync(token, ("once", Once()), ("mark", await MarkAsync(token)), ("press", press));

    private Task<HttpResponseMessage> PressAsync(string token, int x, int y, string frame, params (string Name, string Value)[] more) =>
        PressAsync(token, "narrow", x.ToString(CultureInfo.InvariantCulture), y.ToString(CultureInfo.InvariantCulture), frame, more);

    private async Task<HttpResponseMessage> PressAsync(string token, string layout, string x, string y, string frame, params (string Name, string Value)[] more) =>
        await PostAsync(token, [("once", Once()), ("mark", await MarkAsync(token)), ($"{layout}.x", x), ($"{layout}.y", y), ("frame", frame), .. more]);

    [GeneratedRegex("name=\"mark\" value=\"([^\"]+)\"")]
    private static partial Regex Mark();

    [GeneratedRegex("<svg role=\"img\".*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Drawing();

    [GeneratedRegex("type=\"image\" name=\"\\w+\" src=\"(?<src>[^\"]+)\" width=\"(?<width>\\d+)\" height=\"(?<height>\\d+)\"")]
    private static partial Regex Image();

    [GeneratedRegex(@", plot: \[[^\]]*\]|    spot: \[[^\]]*\]\r?\n")]
    private static partial Regex Places();
}
