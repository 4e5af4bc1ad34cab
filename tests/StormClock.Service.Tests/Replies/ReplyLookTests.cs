using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Service.Replies;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Replies;

/// <summary>Looks into the mailbox: what is opened, put away and asked for, and what a failing server, a kill or mails numbered anew do.</summary>
public class ReplyLookTests
{
    [Fact]
    public async Task Look_MoveTo_PutsAwayWhatIsSettledAndNothingElse()
    {
        await using var box = await AnsweredService.StartAsync(moveTo: "Answers");
        box.Mailbox.Put(RawMail.Bytes("From: <stranger@elsewhere.example>\nMessage-ID: <s@x.example>\n\nHello\n"), box.Service.Now);
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1"));
        Assert.True(Assert.Single(box.Mailbox.Moved).Seen);
        Assert.False(Assert.Single(box.Mailbox.Mails).Seen);
    }

    /// <summary>In a mailbox that people read too: only heads are looked at, and nothing is marked.</summary>
    [Fact]
    public async Task Look_MailsOfOthers_AreNotOpened()
    {
        await using var box = await AnsweredService.StartAsync();
        for (var i = 0; i < 20; i++) box.Mailbox.Put(RawMail.Bytes($"From: <stranger{i}@elsewhere.example>\nMessage-ID: <{i}@x.example>\n\ndone\n"), box.Service.Now);
        await box.LookAsync();
        Assert.DoesNotContain(box.Mailbox.Asked, command => command.Contains("BODY.PEEK[]", StringComparison.Ordinal) || command.StartsWith("SELECT", StringComparison.Ordinal));
        Assert.All(box.Mailbox.Mails, mail => Assert.False(mail.Seen));
    }

    [Fact]
    public async Task Look_Again_AsksOnlyForWhatIsNew()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1"));
        box.Mailbox.Asked.Clear();
        await box.LookAsync();
        Assert.DoesNotContain(box.Mailbox.Asked, command => command.StartsWith("UID FETCH", StringComparison.Ordinal));
        Assert.Contains(box.Mailbox.Asked, command => command.StartsWith("UID SEARCH", StringComparison.Ordinal) && command.Contains("UID 2:", StringComparison.Ordinal));
        Assert.Equal("LOGOUT", box.Mailbox.Asked.Last());
    }

    /// <summary>Two hundred and fifty mails are taken in three looks, in order, each once.</summary>
    [Fact]
    public async Task Look_ManyMails_TakesThemOverSeveralLooksAndSkipsNone()
    {
        await using var box = await AnsweredService.StartAsync();
        for (var i = 0; i < 250; i++)
            box.Mailbox.Put(i is 99 or 100 or 249 ? RawMail.Answer(box.Letter, $"done {(i == 99 ? 1 : i == 100 ? 2 : 3)}") : RawMail.Bytes($"From: <s@elsewhere.example>\nMessage-ID: <{i}@x.example>\n\nhello\n"), box.Service.Now);
        string[] expected = ["1 Done", "1 Done, 2 Done", "1 Done, 2 Done, 3 Done", "1 Done, 2 Done, 3 Done"];
        foreach (var states in expected)
        {
            await box.LookAsync();
            Assert.Equal(states, box.States());
        }
    }

    /// <summary>Old answers that lay in the box before it was set up count too; an old mail without proof gets no word.</summary>
    [Fact]
    public async Task Look_FirstOfAll_ReadsWhatLiesThere()
    {
        await using var box = await AnsweredService.StartAsync();
        box.Mailbox.Put(RawMail.Answer(box.Letter, "done 5"), box.Service.Now - Duration.FromDays(40));
        box.Mailbox.Put(RawMail.Answer(box.Letter, "done 1"), box.Service.Now - Duration.FromDays(2));
        box.Mailbox.Put(RawMail.Bytes("From: <gardener@practice.invalid>\nMessage-ID: <old@x.example>\n\ndone 2\n"), box.Service.Now - Duration.FromDays(2));
        await box.LookAsync();
        Assert.Equal(("1 Done", 0), (box.States(), box.Notices().Count));
    }

    /// <summary>The server has numbered its mails anew: all are looked at again, and none is taken twice.</summary>
    [Fact]
    public async Task Look_OtherValidity_ReadsAgainAndTakesNothingTwice()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1"));
        await box.TakeAsync(RawMail.Answer(box.Letter, "hello"));
        await box.TakeAsync(RawMail.Answer(box.Letter, "later 1"));
        box.Mailbox.Renumber();
        box.Mailbox.Put(RawMail.Answer(box.Letter, "done 2"), box.Service.Now);
        await box.LookAsync();
        Assert.Equal("1 Later, 2 Done", box.States());
        Assert.Single(box.Notices());
    }

    /// <summary>Each place where server or line may fail: told in the log once, shown in /health, and nothing is lost by it.</summary>
    [Theory]
    [InlineData("greeting", "* BYE no room\r\n")]
    [InlineData("greeting", "220 this is another server\r\n")]
    [InlineData("AUTHENTICATE|LOGIN", "TAG NO [AUTHENTICATIONFAILED] wrong\r\n")]
    [InlineData("EXAMINE", "TAG NO no such folder\r\n")]
    [InlineData("UID SEARCH", "")]
    [InlineData("UID SEARCH", "TAG BAD what\r\n")]
    [InlineData("UID FETCH", "")]
    [InlineData("UID FETCH", "* 1 FETCH (UID 1 BODY[] {100000}\r\n")]
    [InlineData("SELECT", "TAG NO no\r\n")]
    [InlineData("SELECT", "* 1 EXISTS\r\n* OK [UIDVALIDITY 7] ok\r\nTAG OK [READ-ONLY] yours to read\r\n")]
    [InlineData("UID STORE", "")]
    [InlineData("UID STORE", "TAG NO no\r\n")]
    public async Task Look_ServerFails_IsToldOnceAndMadeGood(string at, string said)
    {
        await using var box = await AnsweredService.StartAsync(timeoutS: 1);
        box.Mailbox.Put(RawMail.Answer(box.Letter, "done 1"), box.Service.Now);
        box.Mailbox.Fault = command => at.Split('|').Any(begin => command.StartsWith(begin, StringComparison.Ordinal)) ? said : null;
        await box.LookAsync();
        await box.LookAsync();
        Assert.Single(box.Service.Said, entry => entry.Kind == "trouble");
        Assert.Equal(2, (await HealthAsync(box)).GetProperty("failures").GetInt32());

        box.Mailbox.Fault = _ => null;
        await box.LookAsync();
        Assert.Equal("1 Done", box.States());
        Assert.True(Assert.Single(box.Mailbox.Mails).Seen);
        Assert.Single(box.Service.Said, entry => entry.Kind == "done");
        Assert.Contains(box.Service.Said, entry => entry.Kind == "trouble" && entry.Reason == "answers are read again");
        Assert.Equal((0, JsonValueKind.Null), ((await HealthAsync(box)).GetProperty("failures").GetInt32(), (await HealthAsync(box)).GetProperty("lastError").ValueKind));
    }

    [Fact]
    public async Task Look_ServerStalls_EndsByItsTimeout()
    {
        await using var box = await AnsweredService.StartAsync(timeoutS: 1);
        box.Mailbox.Fault = command => command.StartsWith("UID SEARCH", StringComparison.Ordinal) ? "* OK still looking\r\n" : null;
        await box.LookAsync();
        Assert.Single(box.Service.Said, entry => entry.Kind == "trouble");
    }

    /// <summary>After twenty minutes without a good look the page and /health say so.</summary>
    [Fact]
    public async Task Health_MailboxGoneForLong_IsTold()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.LookAsync();
        box.Mailbox.Fault = _ => "";
        for (var i = 0; i < 2; i++)
        {
            await box.Service.AdvanceAsync(Duration.FromMinutes(15));
            await box.LookAsync();
        }

        using var browser = new HttpClient { BaseAddress = box.Service.Address };
        Assert.Contains("Answers by mail have not been read since 2027-09-20 12:00 UTC", await browser.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(503, (int)(await browser.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
    }

    /// <summary>Killed after the answer was taken and before that was kept: it is taken again, and that changes nothing.</summary>
    [Fact]
    public async Task Killed_BetweenTakingAndKeeping_TakesItAgainWithoutHarm()
    {
        using var data = new TempFolder();
        await using var mailbox = new MailboxServer();
        await using (var box = await AnsweredService.StartAsync(data.Path, mailbox))
        {
            var mail = ReplyMail.Read(RawMail.Answer(box.Letter, "done 1", id: "k@phone.example"))!;
            mailbox.Put(RawMail.Answer(box.Letter, "done 1", id: "k@phone.example"), box.Service.Now);
            await box.Service.Services.GetRequiredService<ReplyDesk>().TakeAsync(mail, box.Service.Now, box.Service.Now);
            Assert.Equal("1 Done", box.States());
        }

        await using var again = await AnsweredService.StartAsync(data.Path, mailbox);
        await again.LookAsync();
        Assert.Equal(("1 Done", 0), (again.States(), again.Notices().Count));
        Assert.DoesNotContain(again.Service.Said, entry => entry.Kind == "done");
        Assert.True(Assert.Single(mailbox.Mails).Seen);
    }

    private static async Task<JsonElement> HealthAsync(AnsweredService box)
    {
        using var browser = new HttpClient { BaseAddress = box.Service.Address };
        using var answer = await browser.GetAsync("/health", TestContext.Current.CancellationToken);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("replies");
    }
}
