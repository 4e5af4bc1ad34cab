using CsCheck;
using MimeKit;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Tests.Delivery.Email;

public class MimeLetterTests
{
    [Fact]
    public void Build_Sample_HasTheHeadersThatMatter()
    {
        var letter = Parse(Bytes(Letters.Sample));
        Assert.Equal(Letters.Sample.MessageId, letter.MessageId);
        Assert.Equal(Letters.Sample.ThreadId, letter.InReplyTo);
        Assert.Equal([Letters.Sample.ThreadId], letter.References);
        Assert.Equal(new DateTimeOffset(2027, 9, 20, 10, 30, 0, TimeSpan.Zero), letter.Date);
        Assert.Equal("auto-generated", letter.Headers["Auto-Submitted"]);
        Assert.Equal(["text/plain", "text/html"], Assert.IsType<MultipartAlternative>(letter.Body).Select(part => part.ContentType.MimeType));
    }

    [Fact]
    public void Build_WithAMailboxForAnswers_IsAnsweredThere()
    {
        var letter = MimeLetter.Build(Letters.Sample, new("StormClock", "box@garden.example", "answers@garden.example")).Value!;
        Assert.Equal("answers@garden.example", Assert.Single(letter.ReplyTo.Mailboxes).Address);
        Assert.Equal("box@garden.example", Assert.Single(letter.From.Mailboxes).Address);
        Assert.Empty(Parse(Bytes(Letters.Sample)).ReplyTo);
    }

    /// <summary>Asks the keeper, and is no link of ours: pressing it marks nothing.</summary>
    [Fact]
    public void Build_Sample_CanBeUnsubscribedByAskingTheKeeper()
    {
        var letter = Parse(Bytes(Letters.Sample));
        Assert.Equal("<mailto:box@garden.example?subject=Stop%20garden%20messages%20to%20ada%40garden.example>", letter.Headers[HeaderId.ListUnsubscribe]);
        Assert.DoesNotContain(letter.Headers, header => header.Field.Equals("List-Unsubscribe-Post", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The parts by another route than the library that wrote them: cut at the boundaries, decoded by the framework.</summary>
    [Fact]
    public void Build_WithEnclosures_HasThemBehindTheWords()
    {
        var pdf = Enumerable.Range(0, 5000).Select(at => (byte)(at * 7)).ToArray();
        var message = Letters.Sample with
        {
            Enclosures = [new("garden-work.ics", "text/calendar; charset=utf-8; method=PUBLISH", "BEGIN:VCALENDAR\r\nX:größe\r\n"u8.ToArray()), new("storm-plan.pdf", "application/pdf", pdf)],
        };
        var text = System.Text.Encoding.ASCII.GetString(Bytes(message)).ReplaceLineEndings("\n");
        var boundary = System.Text.RegularExpressions.Regex.Match(text, "^Content-Type: multipart/mixed;\\s+boundary=\"?([^\"\\s]+)", System.Text.RegularExpressions.RegexOptions.Multiline).Groups[1].Value;
        var parts = text.Split($"\n--{boundary}");
        Assert.Equal(5, parts.Length);
        Assert.Equal("--\n", parts[^1]);
        Assert.StartsWith("\nContent-Type: multipart/alternative", parts[1], StringComparison.Ordinal);
        Assert.Equal(message.Enclosures[0].Bytes.ToArray(), Decoded(parts[2], "text/calendar; charset=utf-8; method=PUBLISH", "garden-work.ics"));
        Assert.Equal(pdf, Decoded(parts[3], "application/pdf", "storm-plan.pdf"));
        Assert.Equal(Bytes(message), Bytes(message));
        Assert.Equal(Letters.Sample.Text, Parse(Bytes(message)).TextBody!.ReplaceLineEndings("\n"));
    }

    /// <summary>Letters beyond ASCII arrive, and every byte that travels is ASCII (RFC 2045, RFC 2047).</summary>
    [Fact]
    public void Build_Spanish_ArrivesWholeAndNamesItsLanguage()
    {
        var message = Letters.Sample with { Subject = "Evacúe antes del miércoles 9:15 a.m. AST: Jardín de la Ñ", Text = "Podría llegar: ráfagas, «ñandú».\n", Html = "<p>¿Está adentro?</p>", Language = "es" };
        var bytes = Bytes(message);
        Assert.All(bytes, letter => Assert.True(letter < 128));
        var letter = Parse(bytes);
        Assert.Equal((message.Subject, message.Text, message.Html), (letter.Subject, letter.TextBody!.ReplaceLineEndings("\n"), letter.HtmlBody));
        Assert.All(letter.BodyParts.OfType<TextPart>(), part => Assert.Equal(("utf-8", "es"), (part.ContentType.Charset, part.Headers[HeaderId.ContentLanguage])));
    }

    [Fact]
    public void Build_Twice_GivesTheSameBytes() => Assert.Equal(Bytes(Letters.Sample), Bytes(Letters.Sample));

    /// <summary>Whatever stands in names and subject, the set of headers stays the same and the text arrives.</summary>
    [Fact]
    public void Build_AnyNameAndSubject_AddsNoHeader()
    {
        var headers = Parse(Bytes(Letters.Sample)).Headers.Select(header => header.Field).ToList();
        string[] pieces = ["\r\nBcc: x@y.example", "\n\n", "\r", "\0", "é", "\u2028", "=?utf-8?q?x?=", "\"", "<", "a"];
        var hostile = Gen.Int[0, pieces.Length - 1].Array[0, 12].Select(picks => string.Concat(picks.Select(pick => pieces[pick])));
        Gen.Select(hostile, hostile).Sample((name, subject) =>
        {
            var letter = Parse(Bytes(Letters.Sample with { ToName = name, Subject = subject }));
            Assert.Equal(headers, letter.Headers.Select(header => header.Field));
            Assert.Equal("ada@garden.example", Assert.Single(letter.To.Mailboxes).Address);
            Assert.Null(letter.Headers["Bcc"]);
            Assert.Equal(Letters.Sample.Text, letter.TextBody!.ReplaceLineEndings("\n"));
        });
    }

    [Theory]
    [InlineData("ada@garden.example", true)]
    [InlineData("adà@gärten.example", true)]
    [InlineData("ada", false)]
    [InlineData("", false)]
    [InlineData("@garden.example", false)]
    [InlineData("Ada <ada@garden.example>", false)]
    [InlineData("ada@garden.example, bo@garden.example", false)]
    [InlineData("ada@garden.example\r\nBcc: bo@garden.example", false)]
    [InlineData("ada@garden.example\n", false)]
    public void IsAddress_OneBareAddressOnly(string text, bool expected) => Assert.Equal(expected, MimeLetter.IsAddress(text));

    [Fact]
    public void Build_WithoutADate_IsABug() =>
        Assert.Throws<ArgumentException>(() => MimeLetter.Build(Letters.Sample with { Dated = default }, Letters.From));

    private static byte[] Decoded(string part, string type, string name)
    {
        var (head, body) = (part.Split("\n\n")[0], part.Split("\n\n")[1]);
        Assert.Contains($"Content-Type: {type}", System.Text.RegularExpressions.Regex.Replace(head, "\n\\s+", " "), StringComparison.Ordinal);
        Assert.Contains($"Content-Disposition: attachment; filename={name}", head, StringComparison.Ordinal);
        Assert.Contains("Content-Transfer-Encoding: base64", head, StringComparison.Ordinal);
        return Convert.FromBase64String(body.Replace("\n", "", StringComparison.Ordinal));
    }

    private static byte[] Bytes(Outgoing message)
    {
        using var stream = new MemoryStream();
        MimeLetter.Build(message, Letters.From).Value!.WriteTo(stream);
        return stream.ToArray();
    }

    private static MimeMessage Parse(byte[] bytes) => MimeMessage.Load(new MemoryStream(bytes));
}
