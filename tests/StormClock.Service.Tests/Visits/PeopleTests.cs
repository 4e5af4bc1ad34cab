using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Tests.Web.Api;
using StormClock.Service.Visits;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Visits;

/// <summary>The keeper adds, changes and takes out people; the book is the practice garden's, as a file.</summary>
public sealed partial class PeopleTests : IAsyncLifetime
{
    private const string People = "keeper/people/tern-hook";

    private readonly TempFolder gardens = new();
    private GardenHost host = null!;
    private HttpClient keeper = null!;

    private string File => gardens.File("tern-hook.yaml");

    private GardenBook Book => GardenFiles.Read(File).Value!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var text = await System.IO.File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"));
        await System.IO.File.WriteAllTextAsync(File, text.Replace("practice: true", "practice: false", StringComparison.Ordinal));
        host = await GardenHost.StartAsync(passcode: true, shelf: new GardenShelf(gardens.Path));
        keeper = await host.EnterByPasscodeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        keeper.Dispose();
        await host.DisposeAsync();
        gardens.Dispose();
    }

    [Fact]
    public async Task Add_WithAllThatABookSays_StandsInTheFileAndOnThePage()
    {
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var added = await AddAsync(
            ("name", "Noor"), ("role", "gardener"), ("email", "noor@example.org"), ("second", "noor.two@example.org"), ("days_off", "2027-09-24 2027-09-25"), ("lift_kg", "12.5"), ("ladder", "never"),
            ("language", "es"), ("clock", "12"), ("units", "metric"), ("hours.0.mon", "1"), ("hours.0.wed", "1"), ("hours.0.from", "17:30"), ("hours.0.to", "19:00"),
            ("hours.1.date", "2027-09-21"), ("hours.1.from", "08:00"), ("hours.1.to", "12:00"), ("hours.2.date", ""), ("hours.2.from", ""), ("hours.2.to", ""));

        Assert.Equal((HttpStatusCode.SeeOther, "../tern-hook?told=noor"), (added.StatusCode, added.Headers.Location?.OriginalString));
        var noor = Book.People[^1];
        Assert.Equal(
            ("noor", "Noor", "noor@example.org", "noor.two@example.org", PersonRole.Gardener, 12.5, true, false, Language.Spanish, ClockForm.Hours12, UnitSystem.Metric),
            (noor.Id, noor.Name, noor.Email, noor.SecondEmail, noor.Role, noor.LiftKg, noor.NoLadder, noor.LadderAlone, noor.Language, noor.Clock, noor.Units!.Value));
        Assert.Equal([new LocalDate(2027, 9, 24), new LocalDate(2027, 9, 25)], noor.DaysOff);
        Assert.Equal([[IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday], []], noor.Hours.Select(hours => hours.Days));
        Assert.Equal((new LocalTime(17, 30), new LocalDate(2027, 9, 21)), (noor.Hours[0].From, noor.Hours[1].Date));

        // Whatever else the file said, remarks too, it says still.
        var lines = (await System.IO.File.ReadAllTextAsync(File, Cancellation)).Split('\n').ToList();
        Assert.All(before.Split('\n'), line => Assert.Contains(line, lines));
        Assert.Contains("In the book: Noor.", await GardenHost.ReadAsync(keeper, $"{People}?told=noor"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_SameFormTwice_IsTakenOnce()
    {
        for (var time = 0; time < 2; time++) Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync(("once", "abc"), ("name", "Noor"), ("role", "helper"))).StatusCode);
        Assert.Single(Book.People, person => person.Name == "Noor");
    }

    /// <summary>Whatever a name holds, it is text in the book and text on the page; a line break is a blank.</summary>
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"]}\n- id: evil")]
    [InlineData("Noor\r\nrole: keeper")]
    [InlineData("a\\b: {c} # d")]
    [InlineData("*anchor &x !!tag | > %")]
    [InlineData("Нур 庭 🪴")]
    public async Task Add_HostileName_IsOnlyAName(string name)
    {
        var count = Book.People.Count;
        Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync(("name", name), ("role", "helper"))).StatusCode);
        Assert.Equal(count + 1, Book.People.Count);
        var added = Book.People[^1];
        Assert.Equal((name.ReplaceLineEndings(" ").Trim(), PersonRole.Helper), (added.Name, added.Role));
        Assert.Matches("^[a-z0-9-]+$", added.Id);
        foreach (var page in new[] { People, $"{People}?told={added.Id}", $"{People}/{added.Id}", "keeper" })
            Assert.DoesNotContain("<script>alert", await GardenHost.ReadAsync(keeper, page), StringComparison.Ordinal);
    }

    /// <summary>Each field, refused or not, comes back as it was typed and encoded.</summary>
    [Theory]
    [InlineData("name", "Noor\u0001", "one line of plain text")]
    [InlineData("role", "<script>alert(1)</script>", "not known")]
    [InlineData("email", "<script>alert(1)</script>", "one plain address")]
    [InlineData("email", "noor at example.org", "one plain address")]
    [InlineData("second", "noor@example.org", "there is no first")]
    [InlineData("days_off", "<script>alert(1)</script>", "must be a date")]
    [InlineData("days_off", "2027-13-01]}, evil: [", "must be a date")]
    [InlineData("lift_kg", "<script>alert(1)</script>", "must be a number")]
    [InlineData("lift_kg", "900", "from 1 to 60")]
    [InlineData("ladder", "<script>alert(1)</script>", "not known")]
    [InlineData("language", "<script>alert(1)</script>", "not known")]
    [InlineData("clock", "25", "not known")]
    [InlineData("units", "<script>alert(1)</script>", "not known")]
    [InlineData("hours.0.date", "<script>alert(1)</script>", "must be a date")]
    [InlineData("hours.0.from", "\"}], evil: [{", "must be a time of day")]
    [InlineData("hours.0.to", "<script>alert(1)</script>", "must be a time of day")]
    [InlineData("hours.0.mon", "1", "has no 'from'")]
    public async Task Add_WhatABookMayNotSay_IsRefusedAndKeepsWhatWasTyped(string field, string value, string told)
    {
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var fields = new Dictionary<string, string> { ["name"] = "Noor of the quay", ["role"] = "helper", [field] = value };
        var answer = await AddAsync([.. fields.Select(pair => (pair.Key, pair.Value))]);
        var page = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        var read = WebUtility.HtmlDecode(page);
        Assert.Contains(told, read, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", read, StringComparison.Ordinal);
        if (field != "name") Assert.Contains("value=\"Noor of the quay\"", read, StringComparison.Ordinal);
        if (field is "email" or "second" or "days_off" or "lift_kg" or "hours.0.date" or "hours.0.from" or "hours.0.to") Assert.Contains($"value=\"{value}\"", read, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllTextAsync(File, Cancellation));
    }

    [Theory]
    [InlineData("name")]
    [InlineData("email")]
    [InlineData("days_off")]
    public async Task Add_TenThousandCharacters_AreRefusedWholeAndKeptInTheField(string field)
    {
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var lines = new string('x', 10_000);
        var page = await (await AddAsync(("name", "Noor"), ("role", "helper"), (field, lines))).Content.ReadAsStringAsync(Cancellation);
        Assert.Contains("longer than 400 characters", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains($"value=\"{(field == "name" ? "Noor," : "")}{lines}\"", page, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllTextAsync(File, Cancellation));
    }

    [Fact]
    public async Task Change_OneField_LeavesTheOthersAndTheRestOfTheFile()
    {
        var was = Book.People[1];
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var page = await GardenHost.ReadAsync(keeper, $"{People}/helper");
        Assert.Matches("id=\"email\"[^>]*value=\"helper@practice.invalid\"", page);

        var changed = await ChangeAsync("helper", await MarkAsync("helper"), ("press", "save"), ("email", "amos@example.org"));
        Assert.Equal((HttpStatusCode.SeeOther, "../../tern-hook?told=helper"), (changed.StatusCode, changed.Headers.Location?.OriginalString));
        var now = Book.People[1];
        Assert.Equal((was.Name, "amos@example.org", was.Role, was.LiftKg, was.Hours.Count), (now.Name, now.Email, now.Role, now.LiftKg, now.Hours.Count));
        Assert.Equal(before.Replace("helper@practice.invalid", "\"amos@example.org\"", StringComparison.Ordinal), await System.IO.File.ReadAllTextAsync(File, Cancellation));
    }

    /// <summary>What the page shows, sent back as it is, changes nothing: no field reads otherwise than it is shown.</summary>
    [Theory]
    [InlineData("gardener")]
    [InlineData("helper")]
    public async Task Change_SentBackAsShown_ChangesNothing(string id)
    {
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var page = WebUtility.HtmlDecode(await GardenHost.ReadAsync(keeper, $"{People}/{id}"));
        var fields = Input().Matches(page).Where(input => !input.Value.Contains("checkbox", StringComparison.Ordinal) || input.Value.Contains(" checked", StringComparison.Ordinal))
            .Select(input => (Name: input.Groups[1].Value, Value: InputValue().Match(input.Value) is { Success: true } value ? value.Groups[1].Value : ""))
            .Concat(Select().Matches(page).Select(select => (Name: select.Groups[1].Value, Value: Selected().Match(select.Value) is { Success: true } option ? option.Groups[1].Value : "")))
            .Where(field => field.Name is not ("mark" or "once" or "__RequestVerificationToken" or "press")).DistinctBy(field => field.Name).ToArray();
        Assert.Contains(("hours.0.from", id == "gardener" ? "07:15" : "13:00"), fields);
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync(id, await MarkAsync(id), [("press", "save"), .. fields])).StatusCode);
        Assert.Equal(before, await System.IO.File.ReadAllTextAsync(File, Cancellation));
    }

    /// <summary>The file is edited by hand while the page is open: both versions are shown, and neither is lost.</summary>
    [Fact]
    public async Task Change_FileEditedByHandMeanwhile_IsShownNeverOverwritten()
    {
        var mark = await MarkAsync("helper");
        await EditByHandAsync("name: Amos", "name: Amos Finch");
        var page = WebUtility.HtmlDecode(await (await ChangeAsync("helper", mark, ("press", "save"), ("name", "Amos F."))).Content.ReadAsStringAsync(Cancellation));
        Assert.Contains("Somebody changed this while you were typing", page, StringComparison.Ordinal);
        Assert.Contains("Name: now Amos Finch, yours Amos F.", page, StringComparison.Ordinal);
        Assert.Equal("Amos Finch", Book.People[1].Name);

        // A press on taking out what has changed meanwhile shows it first, too.
        Assert.Equal(HttpStatusCode.OK, (await ChangeAsync("helper", mark, ("press", "remove"))).StatusCode);
        Assert.Equal(2, Book.People.Count);
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync("helper", Mark().Match(page).Groups[1].Value, ("press", "save"), ("name", "Amos F."))).StatusCode);
        Assert.Equal("Amos F.", Book.People[1].Name);
    }

    [Fact]
    public async Task Change_TakenOutByHandMeanwhile_KeepsWhatWasTypedToAddItAgain()
    {
        // Somebody else for the work that takes two.
        await AddAsync(("name", "Noor"), ("role", "helper"));
        var mark = await MarkAsync("helper");
        var text = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var from = text.IndexOf("  - id: helper", StringComparison.Ordinal);
        var to = text.IndexOf("\n  - ", from, StringComparison.Ordinal) + 1;
        await System.IO.File.WriteAllTextAsync(File, text[..from] + text[to..], Cancellation);
        Assert.Equal(["gardener", "noor"], Book.People.Select(person => person.Id));
        var page = WebUtility.HtmlDecode(await (await ChangeAsync("helper", mark, ("press", "save"), ("name", "Amos F."))).Content.ReadAsStringAsync(Cancellation));
        Assert.Contains("Somebody has taken this person out", page, StringComparison.Ordinal);
        Assert.Contains("value=\"Amos F.\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("press", "remove", "the only gardener")]
    [InlineData("role", "helper", "the only gardener")]
    [InlineData("role", "keeper", "the only gardener")]
    [InlineData("email", "", "nobody would be told")]
    public async Task Change_ThatLeavesNobodyToGardenOrToTell_IsRefused(string field, string value, string told)
    {
        var before = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        var page = WebUtility.HtmlDecode(await (await ChangeAsync("gardener", await MarkAsync("gardener"), (field, value))).Content.ReadAsStringAsync(Cancellation));
        Assert.Contains(told, page, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", page, StringComparison.Ordinal);
        Assert.Equal(before, await System.IO.File.ReadAllTextAsync(File, Cancellation));
    }

    /// <summary>All that somebody held opens nothing once they are out of the book: visit, key, links, calendar, and the letters that wait.</summary>
    [Fact]
    public async Task Remove_Somebody_EndsWhateverTheyHeld()
    {
        // Work for two can be done without the helper only when a third is there.
        Assert.Equal(HttpStatusCode.SeeOther, (await AddAsync(("name", "Noor"), ("role", "helper"))).StatusCode);
        using var visit = await host.EnterAsync("helper@practice.invalid");
        using var program = host.Program(await ApiCaller.MakeKeyAsync(visit));
        var keys = host.Service.Services.GetRequiredService<AckKeyRing>();
        var now = host.Service.Now;
        var link = "j/" + new AckToken(AckPurpose.Job, "tern-hook", "e1", "helper", Book.Jobs.First().Id, now + Duration.FromHours(9)).Sign(keys.Newest);
        var calendar = CalendarLinks.Path("tern-hook", "helper", keys.Newest);
        foreach (var (browser, path) in new[] { (visit, "g/tern-hook/now"), (program, "gardens/tern-hook/jobs"), (visit, link), (visit, calendar) })
            Assert.Equal((path, HttpStatusCode.OK), (path, await GardenHost.StatusAsync(browser, path)));

        var page = await GardenHost.ReadAsync(keeper, $"{People}/helper");
        Assert.Contains("gets no more messages", page, StringComparison.Ordinal);

        // As if the mail server had been away: the letter is wanted still, and would go with the next turn.
        var letter = host.Service.Outbox("tern-hook").Last(entry => entry is { PersonId: "helper", State: OutboxState.Sent } && entry.UsefulUntil > now);
        await host.Service.Store.WriteAsync(transaction => OutboxTable.Update(transaction, letter with { State = OutboxState.Waiting, Settled = null, NextTry = now }), Cancellation);
        var sent = host.Mail.Sent.Count(mail => mail.ToAddress == "helper@practice.invalid");
        var removed = await ChangeAsync("helper", await MarkAsync("helper"), ("press", "remove"));
        Assert.Equal((HttpStatusCode.SeeOther, "../../tern-hook?gone=1"), (removed.StatusCode, removed.Headers.Location?.OriginalString));
        Assert.Contains("gets no more messages", await GardenHost.ReadAsync(keeper, $"{People}?gone=1"), StringComparison.Ordinal);

        foreach (var (browser, path) in new[] { (visit, "g/tern-hook/now"), (program, "gardens/tern-hook/jobs"), (visit, link), (visit, calendar) })
            Assert.Equal((path, HttpStatusCode.NotFound), (path, await GardenHost.StatusAsync(browser, path)));
        await host.Service.AdvanceAsync(Duration.FromHours(3));
        Assert.Equal(OutboxState.Withdrawn, host.Service.Outbox("tern-hook").Single(entry => entry.Id == letter.Id).State);
        Assert.Equal(sent, host.Mail.Sent.Count(mail => mail.ToAddress == "helper@practice.invalid"));
    }

    /// <summary>Calendar addresses never run out: they must not show whoever comes later under the same name.</summary>
    [Fact]
    public async Task Add_SomebodyNamedAsOneWhoLeft_GetsAnIdThatNobodyHad()
    {
        await AddAsync(("name", "Noor"), ("role", "helper"));
        await host.Service.Store.WriteAsync(transaction => OutboxTable.Insert(transaction, Sent("noor", host.Service.Now)), Cancellation);
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync("noor", await MarkAsync("noor"), ("press", "remove"))).StatusCode);
        await AddAsync(("name", "Noor"), ("role", "helper"));
        Assert.Equal("noor-2", Book.People[^1].Id);
    }

    /// <summary>Without a role the first of a book is the gardener: who stays keeps their role when the first goes.</summary>
    [Fact]
    public async Task Remove_FirstWithoutARole_LeavesTheRolesOfTheOthers()
    {
        await EditByHandAsync("    role: gardener\n", "");
        await EditByHandAsync("    role: helper\n", "");
        await AddAsync(("name", "Noor"), ("role", "gardener"), ("email", "noor@example.org"));
        Assert.Equal(HttpStatusCode.SeeOther, (await ChangeAsync("gardener", await MarkAsync("gardener"), ("press", "remove"))).StatusCode);
        Assert.Equal([("helper", PersonRole.Helper), ("noor", PersonRole.Gardener)], Book.People.Select(person => (person.Id, person.Role)));
    }

    [Fact]
    public async Task Pages_ForAnybodyElse_AreNotThere()
    {
        using var stranger = host.NewBrowser();
        var asked = await stranger.GetAsync($"{People}/helper", Cancellation);
        Assert.Equal((HttpStatusCode.SeeOther, "../../../in"), (asked.StatusCode, asked.Headers.Location?.OriginalString));
        using var gardener = await host.EnterAsync("gardener@practice.invalid");
        foreach (var path in new[] { People, $"{People}/helper" }) Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, path));
        foreach (var path in new[] { $"{People}/add", $"{People}/helper/change" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(gardener, "in", path, ("once", "x"), ("name", "Noor"), ("press", "remove"))).StatusCode);
            Assert.Equal(HttpStatusCode.BadRequest, (await keeper.PostAsync(path, new FormUrlEncodedContent([new("once", "x"), new("name", "Noor")]), Cancellation)).StatusCode);
        }

        Assert.Equal(2, Book.People.Count);
    }

    [Fact]
    public async Task Pages_InSpanish_SayTheSame()
    {
        keeper.DefaultRequestHeaders.AcceptLanguage.ParseAdd("es");
        var page = WebUtility.HtmlDecode(await (await ChangeAsync("gardener", await MarkAsync("gardener"), ("press", "remove"))).Content.ReadAsStringAsync(Cancellation));
        Assert.Contains("Es la única jardinera", page, StringComparison.Ordinal);
        Assert.Contains("no recibe más mensajes", page, StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> AddAsync(params (string Name, string Value)[] fields) =>
        GardenHost.PostAsync(keeper, People, $"{People}/add", [.. fields.Any(field => field.Name == "once") ? [] : Fresh, .. fields]);

    private Task<HttpResponseMessage> ChangeAsync(string id, string mark, params (string Name, string Value)[] fields) =>
        GardenHost.PostAsync(keeper, $"{People}/{id}", $"{People}/{id}/change", [.. Fresh, ("mark", mark), .. fields]);

    private static (string Name, string Value)[] Fresh => [("once", Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture))];

    private async Task<string> MarkAsync(string id) => Mark().Match(await GardenHost.ReadAsync(keeper, $"{People}/{id}")).Groups[1].Value;

    private async Task EditByHandAsync(string was, string becomes)
    {
        var text = await System.IO.File.ReadAllTextAsync(File, Cancellation);
        Assert.Contains(was, text, StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(File, text.Replace(was, becomes, StringComparison.Ordinal), Cancellation);
        host.Service.Services.GetRequiredService<GardenShelf>().Refresh();
    }

    private static OutboxEntry Sent(string person, Instant now) => new(
        "old", $"tern-hook|e0|{person}|Late|old|email", "email", "tern-hook", person, "Late", "test", [],
        new Outgoing("old", "old@example.org", "thread", "Noor", "noor@example.org", "A letter", "Words.", "<p>Words.</p>", now), now, now, now + Duration.FromHours(9), false, OutboxState.Sent, 1, now, now, null);

    [GeneratedRegex("name=\"mark\" value=\"([^\"]+)\"")]
    private static partial Regex Mark();

    [GeneratedRegex("<input [^>]*name=\"([^\"]+)\"[^>]*>")]
    private static partial Regex Input();

    [GeneratedRegex(" value=\"([^\"]*)\"")]
    private static partial Regex InputValue();

    [GeneratedRegex("<select [^>]*name=\"([^\"]+)\".*?</select>", RegexOptions.Singleline)]
    private static partial Regex Select();

    [GeneratedRegex("<option value=\"([^\"]*)\" selected")]
    private static partial Regex Selected();
}
