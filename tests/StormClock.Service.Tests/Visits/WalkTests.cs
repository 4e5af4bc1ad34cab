using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Visits;

public sealed partial class WalkTests : IAsyncLifetime
{
    private readonly TempFolder gardens = new();
    private GardenHost host = null!;
    private HttpClient browser = null!;

    private string File => gardens.File("tern-hook.yaml");

    private GardenBook Book => GardenFiles.Read(File).Value!;

    public async ValueTask InitializeAsync()
    {
        var text = await System.IO.File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"));
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
    public async Task Add_ByKindAndCount_StandsInTheFileInForceAndInThePlan()
    {
        var area = Book.Areas[0].Id;
        var before = await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);

        var added = await AddAsync(area, "hanging", "4");

        Assert.Equal(HttpStatusCode.SeeOther, added.StatusCode);
        var item = Book.Items.Single(item => item.Kind == "hanging" && item.Count == 4 && item.AreaId == area);
        Assert.True(item.JobsTypical && item.ValueTypical);
        Assert.StartsWith(before.TrimEnd()[..^200], await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        var decision = host.Service.Services.GetRequiredService<GardenDesk>().Latest["tern-hook"];
        Assert.Contains(decision.Plan!.Jobs.Select(job => job.Job).Concat(decision.Plan.LeftOut.Concat(decision.Plan.BetterLeft).Select(left => left.Job)), job => job.ItemId == item.Id);
        Assert.Contains(item.Name, await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area}?told={item.Id}"), StringComparison.Ordinal);
    }

    /// <summary>The answer got lost on the way, so the same form comes again.</summary>
    [Fact]
    public async Task Add_SameFormTwice_IsTakenOnce()
    {
        var area = Book.Areas[0].Id;
        for (var time = 0; time < 2; time++) Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync(area, "trellis", "2", once: "abc")).StatusCode);
        Assert.Single(Book.Items, item => item is { Kind: "trellis", Count: 2 } && item.Name == "Trellis");
    }

    [Fact]
    public async Task Add_SameFormManyTimesAtOnce_IsTakenOnce()
    {
        var area = Book.Areas[0].Id;

        // The browser has its cookie before it sends several at once.
        await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area}");
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => AddAsync(area, "trellis", "2", once: "abc")));
        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode));
        Assert.Single(Book.Items, item => item is { Kind: "trellis", Count: 2 } && item.Name == "Trellis");
    }

    [Theory]
    [InlineData("no_such_kind", "1", "", "not known")]
    [InlineData("trellis", "0", "", "count")]
    [InlineData("trellis", "-3", "", "count")]
    [InlineData("trellis", "many", "", "count")]
    [InlineData("trellis", "99999999", "", "count")]
    [InlineData("trellis", "2", "upside_down", "standing")]
    public async Task Add_WhatABookMayNotSay_IsRefusedAndKeepsWhatWasTyped(string kind, string count, string standing, string told)
    {
        var before = await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);
        var page = WebUtility.HtmlDecode(await (await AddAsync(Book.Areas[0].Id, kind, count, standing: standing, name: "By the gate")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(told, page, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", page, StringComparison.Ordinal);
        Assert.Contains("value=\"By the gate\"", page, StringComparison.Ordinal);
        Assert.Contains($"value=\"{count}\"", page, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken));
    }

    /// <summary>Whatever a field holds, it is text in the book and text on the page.</summary>
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"]}\n- id: evil")]
    [InlineData("../../etc/passwd")]
    [InlineData("a\\b: {c} # d")]
    [InlineData("*anchor &x !!tag")]
    [InlineData("ключ 鉢 🪴")]
    public async Task Add_HostileName_IsOnlyAName(string name)
    {
        var area = Book.Areas[0].Id;
        var count = Book.Items.Count;
        Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync(area, "trellis", "1", name: name)).StatusCode);
        Assert.Equal(count + 1, Book.Items.Count);
        var added = Book.Items[^1];
        Assert.Equal(name.ReplaceLineEndings(" ").Trim(), added.Name);
        Assert.Matches("^[a-z0-9-]+$", added.Id);
        var page = await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area}/{added.Id}");
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.Equal(["tern-hook.yaml"], Directory.GetFiles(gardens.Path).Select(Path.GetFileName).Where(file => !file!.EndsWith(".bak", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Change_RefinedInOwnUnits_IsReadAsTheBookReadsThem()
    {
        var item = Book.Items[0];
        var changed = await ChangeAsync(item, await MarkAsync(item), ("count", "7"), ("height", "4 ft"), ("name", item.Name));
        Assert.Equal(HttpStatusCode.SeeOther, changed.StatusCode);
        var now = Book.Items.Single(known => known.Id == item.Id);
        Assert.Equal((7, 1.2192), (now.Count, Math.Round(now.Written.HeightM!.Value, 4)));
        Assert.Equal(item.Jobs.Select(job => job.Id), now.Jobs.Select(job => job.Id));
    }

    /// <summary>The file is edited by hand while the page is open: elsewhere, that stays; the same thing, both are shown.</summary>
    [Fact]
    public async Task Change_FileEditedByHandMeanwhile_IsMergedOrShownNeverOverwritten()
    {
        var (item, other) = (Book.Items[0], Book.Items[1]);
        var mark = await MarkAsync(item);
        await EditByHandAsync(other.Id, $"count: {other.Count}", "count: 31");
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync(item, mark, ("count", "8"), ("name", item.Name))).StatusCode);
        Assert.Equal((8, 31), (Book.Items[0].Count, Book.Items[1].Count));

        mark = await MarkAsync(Book.Items[0]);
        await EditByHandAsync(item.Id, "count: 8", "count: 12");
        var conflict = await ChangeAsync(item, mark, ("count", "9"), ("name", item.Name));
        var page = WebUtility.HtmlDecode(await conflict.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("Somebody changed this while you were typing", page, StringComparison.Ordinal);
        Assert.Contains("now 12, yours 9", page, StringComparison.Ordinal);
        Assert.Equal(12, Book.Items[0].Count);

        var fresh = Mark().Match(page).Groups[1].Value;
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync(item, fresh, ("count", "9"), ("name", item.Name))).StatusCode);
        Assert.Equal(9, Book.Items[0].Count);
    }

    [Fact]
    public async Task Change_FileSpoiltByHandMeanwhile_IsRefusedWithItsLine()
    {
        var item = Book.Items[0];
        var mark = await MarkAsync(item);
        var spoilt = (await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken)).Replace("count: 1", "count: one", StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, spoilt, TestContext.Current.CancellationToken);
        var page = WebUtility.HtmlDecode(await (await ChangeAsync(item, mark, ("count", "9"), ("name", item.Name))).Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Matches(@"tern-hook\.yaml:\d+: ", page);
        Assert.Contains("value=\"9\"", page, StringComparison.Ordinal);
        Assert.Equal(spoilt, await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Remove_AndAddedWork_StandInTheFile()
    {
        var item = Book.Items[0];
        var job = await GardenHost.PostAsync(browser, Page(item), $"{Page(item)}/job", ("once", "j"), ("job", "soak"), ("minutes", "6"), ("people", "1"));
        Assert.Equal(HttpStatusCode.SeeOther, job.StatusCode);
        Assert.Equal((6, 1), Book.Items[0].Jobs.Where(known => known.Kind == JobKind.Soak).Select(known => (known.Minutes, known.People)).Single());
        Assert.Equal(item.Jobs.Select(known => (known.Kind, known.Minutes)), Book.Items[0].Jobs.Where(known => known.Kind != JobKind.Soak).Select(known => (known.Kind, known.Minutes)));

        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync(item, await MarkAsync(item), ("press", "remove"))).StatusCode);
        Assert.DoesNotContain(Book.Items, known => known.Id == item.Id);
    }

    /// <summary>What comes with the kind stays named by its kind alone, so that a better catalogue can help later.</summary>
    [Fact]
    public async Task AddedWork_OfAThingWithUsualWork_WritesNoFigureOfThat()
    {
        var area = Book.Areas[0].Id;
        await AddAsync(area, "swing", "1", name: "Old swing");
        var swing = Book.Items.Single(item => item.Name == "Old swing");
        await GardenHost.PostAsync(browser, Page(swing), $"{Page(swing)}/job", ("once", "j"), ("job", "tie"), ("minutes", "6"), ("people", "1"));

        Assert.Equal([JobKind.TakeDown, JobKind.Tie], Book.Items.Single(item => item.Name == "Old swing").Jobs.Select(job => job.Kind));
        var text = await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);
        Assert.Contains("- {kind: take_down, fallback: ", text[text.IndexOf("Old swing", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Walk_AllSeen_EndsWithItsDateInTheBook()
    {
        var area = Book.AreaOf(Book.Items[0]);
        Assert.Contains("Still as it was", await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area.Id}"), StringComparison.Ordinal);
        await GardenHost.PostAsync(browser, $"g/tern-hook/walk/{area.Id}", $"g/tern-hook/walk/{area.Id}/same", ("item", "all"));
        Assert.DoesNotContain("Still as it was", await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area.Id}"), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, "g/tern-hook/walk", "g/tern-hook/walk/end", ("once", "e"))).StatusCode);
        Assert.Equal(host.Service.Now.InZone(Book.Zone).Date, Book.Surveyed);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Contains("Still as it was", await GardenHost.ReadAsync(browser, $"g/tern-hook/walk/{area.Id}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Area_Added_CanBeWalked()
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, "g/tern-hook/walk", "g/tern-hook/walk/add-area", ("once", "a"), ("name", "Behind the shed"), ("site", Book.Sites[0].Id), ("exposure", "open"))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, "g/tern-hook/walk/behind-the-shed"));
        Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync("behind-the-shed", "trellis", "1")).StatusCode);
    }

    private static string Page(Item item) => $"g/tern-hook/walk/{item.AreaId}/{item.Id}";

    private Task<HttpResponseMessage> AddAsync(string area, string kind, string count, string? once = null, string standing = "", string name = "") =>
        GardenHost.PostAsync(browser, $"g/tern-hook/walk/{area}", $"g/tern-hook/walk/{area}/add", ("once", once ?? Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture)), ("kind", kind), ("count", count), ("standing", standing), ("name", name));

    private async Task<string> MarkAsync(Item item) => Mark().Match(await GardenHost.ReadAsync(browser, Page(item))).Groups[1].Value;

    private Task<HttpResponseMessage> ChangeAsync(Item item, string mark, params (string Name, string Value)[] fields) =>
        GardenHost.PostAsync(browser, Page(item), $"{Page(item)}/change", [("once", Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture)), ("mark", mark), .. fields]);

    private async Task EditByHandAsync(string item, string was, string becomes)
    {
        var text = await System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);
        var at = text.IndexOf(was, text.IndexOf($"id: {item}", StringComparison.Ordinal), StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, text[..at] + becomes + text[(at + was.Length)..], TestContext.Current.CancellationToken);
    }

    [GeneratedRegex("name=\"mark\" value=\"([^\"]+)\"")]
    private static partial Regex Mark();
}
