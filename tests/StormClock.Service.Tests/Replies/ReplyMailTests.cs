using System.Text;
using CsCheck;
using StormClock.Service.Replies;

namespace StormClock.Service.Tests.Replies;

public class ReplyMailTests
{
    private const string Head = "From: Amos <amos@garden.example>\nMessage-ID: <a1@phone.example>\nIn-Reply-To: <letter@stormclock.invalid>\nReferences: <thread@stormclock.invalid>\n <letter@stormclock.invalid>\n";

    [Fact]
    public void Read_PlainMail_GivesSenderNamesAndWords()
    {
        var mail = Read(Head + "Content-Type: text/plain\n\ndone 3 5\n")!;
        Assert.Equal(("a1@phone.example", "amos@garden.example", false), (mail.Id, mail.From, mail.IsAutomatic));
        Assert.Equal(["letter@stormclock.invalid", "thread@stormclock.invalid"], mail.AnswersTo);
        Assert.Equal("Done 3 5", Said(mail));
    }

    /// <summary>Who must never be taken at his word nor answered: RFC 3834 section 2, RFC 3464, and common practice.</summary>
    [Theory]
    [InlineData("Auto-Submitted: auto-replied\n", true)]
    [InlineData("Auto-Submitted: auto-generated; owner=x\n", true)]
    [InlineData("Auto-Submitted: no\n", false)]
    [InlineData("Auto-Submitted: No\n", false)]
    [InlineData("Precedence: bulk\n", true)]
    [InlineData("Precedence: auto_reply\n", true)]
    [InlineData("Precedence: list\n", true)]
    [InlineData("Precedence: first-class\n", false)]
    [InlineData("Return-Path: <>\n", true)]
    [InlineData("Return-Path: < >\n", true)]
    [InlineData("Return-Path: <amos@garden.example>\n", false)]
    [InlineData("X-Autoreply: yes\n", true)]
    [InlineData("Content-Type: multipart/report; report-type=delivery-status; boundary=b\n", true)]
    [InlineData("Content-Type: multipart/report; report-type=disposition-notification; boundary=b\n", true)]
    public void Read_Head_TellsAMachine(string line, bool automatic) => Assert.Equal(automatic, Read(Head + line + "\ndone\n")!.IsAutomatic);

    public static TheoryData<string, string, string> Bodies => new()
    {
        { "HTML alone", "Content-Type: text/html; charset=utf-8\n\n<div>done 3</div><blockquote>done 1</blockquote>", "Done 3" },
        { "both forms", "Content-Type: multipart/alternative; boundary=b\n\n--b\nContent-Type: text/plain\n\ndone 3\n--b\nContent-Type: text/html\n\n<p>done 4</p>\n--b--\n", "Done 3" },
        { "empty plain form", "Content-Type: multipart/alternative; boundary=b\n\n--b\nContent-Type: text/plain\n\n \n--b\nContent-Type: text/html\n\n<p>done 4</p>\n--b--\n", "Done 4" },
        { "a file first", "Content-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: text/plain\nContent-Disposition: attachment; filename=a.txt\n\ndone 1\n--b\nContent-Type: text/plain\n\ndone 3\n--b--\n", "Done 3" },
        { "a mail hangs on it", "Content-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: message/rfc822\n\nSubject: x\n\ndone 1\n--b--\n", "" },
        { "quoted-printable", "Content-Type: text/plain; charset=utf-8\nContent-Transfer-Encoding: quoted-printable\n\nd=6Fne=203\n", "Done 3" },
        { "base64", "Content-Type: text/plain\nContent-Transfer-Encoding: base64\n\nZG9uZSAzCg==\n", "Done 3" },
        { "base64 that breaks off", "Content-Type: text/plain\nContent-Transfer-Encoding: base64\n\nZG9uZSAz", "Done 3" },
        { "a charset nobody knows", "Content-Type: text/plain; charset=x-nobody\n\ndone 3\n", "Done 3" },
        { "another charset than it says", "Content-Type: text/plain; charset=us-ascii\n\n\u00A1Hola!\n\ndone 3\n\n\u00A1gracias!\n", "Done 3" },
        { "a boundary that never comes", "Content-Type: multipart/mixed; boundary=b\n\ndone 3\n", "" },
        { "a part that never ends", "Content-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: text/plain\n\ndone 3\n", "Done 3" },
        { "no words", "Content-Type: image/png\n\nxxx\n", "" },
    };

    [Theory, MemberData(nameof(Bodies))]
    public void Read_Body_GivesItsWords(string what, string body, string commands)
    {
        Assert.NotEmpty(what);
        Assert.Equal(commands, Said(Read(Head + body)!));
    }

    /// <summary>The words come first; a picture of the tied arbor behind them is not loaded.</summary>
    [Fact]
    public void Read_TenMegabytes_TakesTheWordsBeforeThem()
    {
        var mail = Head + "Content-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: text/plain\n\ndone 3\n--b\nContent-Type: image/jpeg\nContent-Transfer-Encoding: base64\n\n"
            + string.Concat(Enumerable.Repeat(new string('A', 76) + "\n", 140_000)) + "--b--\n";
        Assert.True(mail.Length > 10_000_000);
        Assert.Equal("Done 3", Said(Read(mail)!));
    }

    [Fact]
    public void Read_ThousandParts_LooksAtTheFirst()
    {
        var parts = string.Concat(Enumerable.Range(0, 1000).Select(i => $"--b\nContent-Type: text/plain\n\n{(i == 999 ? "done 1" : "")}\n"));
        Assert.Equal("", Said(Read(Head + "Content-Type: multipart/mixed; boundary=b\n\n" + parts + "--b--\n")!));
    }

    [Fact]
    public void Read_ThousandPartsInEachOther_IsNoTrouble()
    {
        var nested = string.Concat(Enumerable.Range(0, 1000).Select(i => $"Content-Type: multipart/mixed; boundary=b{i}\n\n--b{i}\n"));
        Assert.Equal("", Said(Read(Head + nested + "Content-Type: text/plain\n\ndone 1\n")!));
    }

    [Fact]
    public void Read_ThousandNames_KeepsTheNearest()
    {
        var names = string.Concat(Enumerable.Range(0, 1000).Select(i => $" <n{i}@x.example>\n"));
        var mail = Read("From: a@b.example\nReferences:\n" + names + "\ndone\n")!;
        Assert.Equal("n999@x.example", mail.AnswersTo[0]);
        Assert.True(mail.AnswersTo.Count <= 60);
    }

    [Fact]
    public void Read_WithoutMessageId_IsTheSameMailTheSameId()
    {
        const string mail = "From: a@b.example\n\ndone\n";
        Assert.Equal(Read(mail)!.Id, Read(mail)!.Id);
        Assert.NotEqual(Read(mail)!.Id, Read(mail + "x")!.Id);
    }

    [Fact]
    public void Read_AnyBytes_NeverThrows() => Gen.Byte.Array[0, 2000].Sample(bytes => ReplyMail.Read(bytes), iter: 2000);

    /// <summary>Real forms spoilt at random: bytes changed, cut out, doubled.</summary>
    [Fact]
    public void Read_SpoiltMail_NeverThrows()
    {
        var mails = Bodies.Select(row => RawMail.Bytes(Head + row.Data.Item2)).ToList();
        Gen.Select(Gen.Int[0, mails.Count - 1], Gen.Select(Gen.Int[0, 5000], Gen.Int[0, 3], Gen.Byte).List[1, 12]).Sample(
            (which, changes) =>
            {
                var bytes = mails[which].ToList();
                foreach (var (place, how, put) in changes)
                {
                    if (bytes.Count == 0) break;
                    var at = place % bytes.Count;
                    if (how == 0) bytes[at] = put;
                    else if (how == 1) bytes.RemoveRange(at, Math.Min(bytes.Count - at, put));
                    else if (how == 2) bytes.InsertRange(at, bytes.Skip(at).Take(put).ToList());
                    else bytes.Insert(at, (byte)"<>\r\n:;=\"-"[put % 9]);
                }

                if (ReplyMail.Read(bytes.ToArray()) is { } read) ReplyText.Read(read.Lines, "");
            },
            iter: 5000);
    }

    private static ReplyMail? Read(string mail) => ReplyMail.Read(RawMail.Bytes(mail));

    private static string Said(ReplyMail mail) =>
        string.Join("; ", ReplyText.Read(mail.Lines, "").Commands.Select(command => $"{command.Verb} {string.Join(' ', command.Numbers)}"));
}
