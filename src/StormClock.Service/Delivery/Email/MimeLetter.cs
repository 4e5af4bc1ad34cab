using System.Security.Cryptography;
using System.Text;
using MimeKit;
using MimeKit.Text;
using StormClock.Core;
using StormClock.Service.Messages;

namespace StormClock.Service.Delivery.Email;

/// <summary>A message in the form of Internet mail. The same message always gives the same bytes.</summary>
public static class MimeLetter
{
    /// <summary>The letter, or a fault when the recipient's address is no address. Names and subject cannot add headers.</summary>
    public static ReadResult<MimeMessage> Build(Outgoing message, EmailSender from)
    {
        if (message.Dated == default) throw new ArgumentException("The message has no date.", nameof(message));
        if (!IsAddress(message.ToAddress))
        {
            return new ReadFault("address", $"'{Plain.Cut(message.ToAddress, 80)}' is no mail address: write name@domain in the garden file.");
        }

        var letter = new MimeMessage { Subject = Plain.Line(message.Subject), Body = Whole(message) };
        letter.From.Add(Mailbox(from.Name, from.Address));
        if (from.ReplyTo is { } answers) letter.ReplyTo.Add(Mailbox(from.Name, answers));
        letter.To.Add(Mailbox(message.ToName, message.ToAddress));
        letter.Date = message.Dated.ToDateTimeOffset();
        letter.MessageId = message.MessageId;
        letter.InReplyTo = message.ThreadId;
        letter.References.Add(message.ThreadId);
        letter.Headers.Add("List-Unsubscribe", Unsubscribe(message, from)); // RFC 2369: writes to the keeper, changes nothing by itself
        letter.Headers.Add("Auto-Submitted", "auto-generated"); // RFC 3834: no out-of-office answers, please
        return letter;
    }

    /// <summary>One bare address with a domain: no display name, no list, no line break.</summary>
    public static bool IsAddress(string text) =>
        !text.Any(char.IsControl)
        && MailboxAddress.TryParse(text, out var mailbox)
        && mailbox.Address == text
        && mailbox.Domain.Length > 0;

    private static MailboxAddress Mailbox(string name, string address) => new(Encoding.UTF8, Plain.Line(name), address);

    private static string Unsubscribe(Outgoing message, EmailSender from)
    {
        var subject = Uri.EscapeDataString($"Stop garden messages to {message.ToAddress}");
        return $"<mailto:{Uri.EscapeDataString(from.Address).Replace("%40", "@", StringComparison.Ordinal)}?subject={subject}>";
    }

    /// <summary>The words alone, or with what goes with them behind.</summary>
    private static Multipart Whole(Outgoing message)
    {
        var words = Body(message);
        if (message.Enclosures.Count == 0) return words;

        var whole = new Multipart("mixed") { words };
        whole.Boundary = Boundary("stormclock-whole-", message);
        foreach (var enclosure in message.Enclosures) whole.Add(Part(enclosure));
        return whole;
    }

    private static MimePart Part(Enclosure enclosure) => new(ContentType.Parse(enclosure.MediaType))
    {
        Content = new MimeContent(new MemoryStream(enclosure.Bytes.ToArray())),
        ContentDisposition = new ContentDisposition(ContentDisposition.Attachment) { FileName = enclosure.FileName },
        ContentTransferEncoding = ContentEncoding.Base64,
    };

    private static MultipartAlternative Body(Outgoing message)
    {
        var body = new MultipartAlternative { Part(TextFormat.Plain, message.Text, message.Language), Part(TextFormat.Html, message.Html, message.Language) };
        body.Boundary = Boundary("stormclock-", message);
        return body;
    }

    /// <summary>The library would choose a new one at random each time.</summary>
    private static string Boundary(string prefix, Outgoing message) =>
        prefix + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(message.EntryId)).AsSpan(0, 16));

    private static TextPart Part(TextFormat format, string text, string language)
    {
        var part = new TextPart(format) { ContentTransferEncoding = ContentEncoding.QuotedPrintable };
        part.SetText(Encoding.UTF8, text);
        part.Headers.Add(HeaderId.ContentLanguage, language); // RFC 3282
        return part;
    }
}
