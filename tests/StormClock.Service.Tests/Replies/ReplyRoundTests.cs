using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Replies;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Replies;

/// <summary>Answers through a mailbox on this machine into the real service: what each does, and what its writer hears.</summary>
public class ReplyRoundTests
{
    /// <summary>Words, what becomes of jobs 1 to 5, and a part of the short mail that goes back; "" for none.</summary>
    [Theory]
    [InlineData("done", "1 Done, 2 Done, 3 Done, 4 Done, 5 Done", "")]
    [InlineData("Done 3, 5.", "3 Done, 5 Done", "")]
    [InlineData("cannot 2", "2 Cannot", "")]
    [InlineData("later 4", "4 Later", "")]
    [InlineData("done 1\ncannot 2\nlater 3", "1 Done, 2 Cannot, 3 Later", "")]
    [InlineData("done\ncannot 2", "1 Done, 2 Cannot, 3 Done, 4 Done, 5 Done", "")]
    [InlineData("done 3 9", "3 Done", "Taken from your answer: done 3.")]
    [InlineData("done 9", "", "no number 9: the message shows jobs 1 to 5")]
    [InlineData("done 1-3\ncannot 3", "", "two things of one job")]
    [InlineData("I will see to it", "", "Not understood: \"I will see to it\"")]
    [InlineData("3 done?", "", "Not understood")]
    [InlineData("", "", "no words above the quoted text")]
    [InlineData("in", "", "it is not closed now")]
    public async Task Answer_Words_DoThisAndOnlyThis(string words, string states, string told)
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, words));

        Assert.Equal(states, box.States());
        if (told.Length == 0) Assert.Empty(box.Notices());
        else Assert.Contains(told, Assert.Single(box.Notices()).Message.Text, StringComparison.Ordinal);
        Assert.True(Assert.Single(box.Mailbox.Mails).Seen);
    }

    /// <summary>Mails that must not act, and of which nobody hears; the box leaves them as they are.</summary>
    [Theory]
    [InlineData("absence note", "Auto-Submitted: auto-replied\n")]
    [InlineData("list", "Precedence: bulk\n")]
    [InlineData("auto_reply", "Precedence: auto_reply\n")]
    [InlineData("nobody to answer to", "Return-Path: <>\n")]
    public async Task Answer_OfAMachine_IsLeftAlone(string what, string heads)
    {
        Assert.NotEmpty(what);
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done", heads));

        Assert.Equal("", box.States());
        Assert.Empty(box.Notices());
        Assert.False(Assert.Single(box.Mailbox.Mails).Seen);
    }

    [Fact]
    public async Task Answer_ReportOfDelivery_IsLeftAlone()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Bytes($"From: <mailer-daemon@example.org>\nIn-Reply-To: <{box.Letter.Message.MessageId}>\nContent-Type: multipart/report; report-type=delivery-status; boundary=b\n\n--b\nContent-Type: text/plain\n\ndone\n--b--\n"));
        Assert.Equal(("", 0), (box.States(), box.Notices().Count));
    }

    /// <summary>As with a link, whoever holds the message answers for its person; a phone may well send from another address.</summary>
    [Fact]
    public async Task Answer_FromAnotherAddress_CountsForThePersonOfTheMessage()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 2", from: "somebody@elsewhere.example"));
        Assert.Equal("2 Done", box.States());
        Assert.Equal(box.Letter.Message.ToName, box.Service.Store.Read(reader => JobStates.OfEpisode(reader, box.Garden.Id, "e1")).Single().By);

        // What is told goes to the address in the book, never to where the mail came from.
        await box.TakeAsync(RawMail.Answer(box.Letter, "what?", from: "somebody@elsewhere.example"));
        Assert.Equal(box.Letter.Message.ToAddress, Assert.Single(box.Notices()).Message.ToAddress);
    }

    /// <summary>The sender alone is no proof. A person who clearly meant to answer hears how; nobody else hears anything.</summary>
    [Theory]
    [InlineData("gardener@practice.invalid", "done 1", true)]
    [InlineData("Gardener@Practice.Invalid", "done 1", true)]
    [InlineData("gardener@practice.invalid", "Dear all,\ndone 1", false)]
    [InlineData("stranger@elsewhere.example", "done 1", false)]
    public async Task Answer_WithoutProof_NeverActs(string from, string words, bool told)
    {
        await using var box = await AnsweredService.StartAsync();
        foreach (var name in (string[])["", "thread@stormclock.invalid", $"{box.Letter.Id}@stormclock.invalid", $"{box.Letter.Id}.00112233445566778899aabbccddeeff@stormclock.invalid"])
        {
            await box.TakeAsync(RawMail.Bytes($"From: <{from}>\nMessage-ID: <{Guid.NewGuid():N}@x.example>\nIn-Reply-To: <{name}>\n\n{words}\n"));
        }

        Assert.Equal("", box.States());
        Assert.All(box.Mailbox.Mails, mail => Assert.False(mail.Seen));
        Assert.Equal(told ? 3 : 0, box.Notices().Count);
        Assert.All(box.Notices(), notice => Assert.Equal("gardener@practice.invalid", notice.Message.ToAddress));
    }

    /// <summary>Somebody who has seen one letter's id but no proof; marks at random, and those of another installation.</summary>
    [Fact]
    public async Task Answer_TenThousandForgeries_NoneActs()
    {
        await using var box = await AnsweredService.StartAsync();
        var desk = box.Service.Services.GetRequiredService<ReplyDesk>();
        var other = new AckKey("k1", Enumerable.Range(1, 32).Select(i => (byte)i).ToArray());
        var random = new Random(42);
        var mark = new byte[16];
        for (var i = 0; i < 10_000; i++)
        {
            random.NextBytes(mark);
            var name = i % 100 == 0 ? ReplyProof.Sign(box.Letter.Id, other with { Id = $"{i}" }) : $"{box.Letter.Id}.{Convert.ToHexStringLower(mark)}";
            var verdict = await desk.TakeAsync(new($"{i}", "stranger@elsewhere.example", [OutboxIds.Named(name)], false, ["done"]), box.Service.Now, box.Service.Now);
            Assert.Equal(ReplyOutcome.NoProof, verdict.Outcome);
        }

        Assert.Equal("", box.States());
    }

    [Fact]
    public async Task Answer_ShownTwice_IsTakenOnce()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1", id: "same@phone.example"));
        await box.TakeAsync(RawMail.Answer(box.Letter, "later 1", id: "newer@phone.example"));
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1", id: "same@phone.example"));

        Assert.Equal("1 Later", box.States());
        Assert.Contains(box.Service.Said, entry => entry.Kind == "reply" && entry.Reason == "taken before");
    }

    /// <summary>A mail that was long on its way does not undo what was said after it was written.</summary>
    [Fact]
    public async Task Answer_OlderThanTheLastWord_LeavesThat()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1 2"));
        box.Mailbox.Put(RawMail.Answer(box.Letter, "later 1 3"), box.Service.Now - Duration.FromHours(2));
        await box.LookAsync();

        Assert.Equal("1 Done, 2 Done, 3 Later", box.States());
        Assert.Empty(box.Notices());
    }

    /// <summary>A message that a newer plan has overtaken is still answered for its own jobs and numbers, as its links are.</summary>
    [Fact]
    public async Task Answer_ToAnOlderMessage_MeansItsOwnNumbers()
    {
        await using var box = await AnsweredService.StartAsync();
        await AnsweredService.LetterAsync(box.Service, box.Garden, "MainWork/2", [.. box.Letter.JobIds.Reverse()], box.Service.Now);
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1"));
        Assert.Equal("1 Done", box.States());
    }

    [Theory]
    [InlineData(34, true)]
    [InlineData(36, false)]
    public async Task Answer_DaysLater_RunsOutWithTheLinks(int days, bool taken)
    {
        await using var box = await AnsweredService.StartAsync();
        var letter = await AnsweredService.LetterAsync(box.Service, box.Garden, "MainWork/0", box.Letter.JobIds, AnsweredService.Begin - Duration.FromDays(days));
        await box.TakeAsync(RawMail.Answer(letter, "done 1"));
        Assert.Equal(taken ? "1 Done" : "", box.States());
        Assert.Equal(taken ? 0 : 1, box.Notices().Count);
    }

    [Fact]
    public async Task Answer_ToAMessageWithoutWork_IsToldSo()
    {
        await using var box = await AnsweredService.StartAsync();
        var letter = await AnsweredService.LetterAsync(box.Service, box.Garden, "Leave/1", [], box.Service.Now);
        await box.TakeAsync(RawMail.Answer(letter, "done"));
        Assert.Contains("asks for no work", Assert.Single(box.Notices()).Message.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Answer this mail", box.Notices()[0].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answer_JobNoLongerInTheBook_IsPassedOver()
    {
        await using var box = await AnsweredService.StartAsync();
        var letter = await AnsweredService.LetterAsync(box.Service, box.Garden, "MainWork/3", ["nothing/pick", box.Letter.JobIds[1]], box.Service.Now);
        await box.TakeAsync(RawMail.Answer(letter, "done 1 2"));
        Assert.Equal("2 Done", box.States());
    }

    /// <summary>The short mail can itself be answered, and is written by a machine for all who ask.</summary>
    [Fact]
    public async Task Notice_IsSentOnceAndItsAnswerCounts()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "finished"));
        var notice = Assert.Single(box.Notices());
        Assert.Equal(OutboxState.Sent, notice.State);
        Assert.Equal(notice.Id, Assert.Single(box.Mail.Sent).EntryId);

        await box.TakeAsync(RawMail.Bytes($"From: <{notice.Message.ToAddress}>\nMessage-ID: <n1@phone.example>\nIn-Reply-To: <{notice.Message.MessageId}>\nReferences: <{notice.Message.ThreadId}> <{notice.Message.MessageId}>\n\ndone 4\n"));
        Assert.Equal("4 Done", box.States());
        await box.LookAsync();
        Assert.Single(box.Mail.Sent);
    }

    /// <summary>Two machines that write to each other are cut short, and so is a person after the third time in a day.</summary>
    [Fact]
    public async Task Notice_ManyBadAnswers_AtMostThreeADay()
    {
        await using var box = await AnsweredService.StartAsync();
        for (var i = 0; i < 10; i++) await box.TakeAsync(RawMail.Answer(box.Letter, $"hello {i}"));
        Assert.Equal(3, box.Notices().Count);
        await box.TakeAsync(RawMail.Answer(box.Letter, "done 1"));
        Assert.Equal("1 Done", box.States());
    }

    /// <summary>No decision about a garden withdraws it: it waits until the mail server is back.</summary>
    [Fact]
    public async Task Notice_IsNotWithdrawnByTheNextTurn()
    {
        await using var box = await AnsweredService.StartAsync();
        await box.TakeAsync(RawMail.Answer(box.Letter, "hello"));
        await box.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Equal(OutboxState.Sent, Assert.Single(box.Notices()).State);
    }

    /// <summary>A new key signs from now on; answers to letters of the old one count as long as its line is kept.</summary>
    [Theory]
    [InlineData(true, "1 Done")]
    [InlineData(false, "")]
    public async Task Answer_KeysChanged_CountsWhileTheOldOneIsKept(bool kept, string states)
    {
        using var data = new TempFolder();
        await using var mailbox = new MailboxServer();
        byte[] answer;
        await using (var box = await AnsweredService.StartAsync(data.Path, mailbox)) answer = RawMail.Answer(box.Letter, "done 1");
        var keys = data.File("link-keys");
        await File.WriteAllTextAsync(keys, $"k2 {Convert.ToBase64String(new byte[32])}\n{(kept ? await File.ReadAllTextAsync(keys, TestContext.Current.CancellationToken) : "")}", TestContext.Current.CancellationToken);

        await using var again = await AnsweredService.StartAsync(data.Path, mailbox);
        await again.TakeAsync(answer);
        Assert.Equal(states, again.States());
    }
}
