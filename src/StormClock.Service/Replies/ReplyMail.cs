using System.Security.Cryptography;
using MimeKit;

namespace StormClock.Service.Replies;

/// <summary>A mail out of the box, as far as an answer needs it.</summary>
/// <param name="Id">The same for the same mail, however often it is shown.</param>
/// <param name="From">Who says to have written it; "" when nobody does. Anybody can write anything here.</param>
/// <param name="AnswersTo">The Message-IDs that it names, the nearest first.</param>
/// <param name="IsAutomatic">A machine wrote it: an absence note, a report of delivery, a list.</param>
/// <param name="Lines">Of its words, with what it quotes.</param>
public sealed record ReplyMail(string Id, string From, IReadOnlyList<string> AnswersTo, bool IsAutomatic, IReadOnlyList<string> Lines)
{
    /// <summary>Bytes that are looked at; the words stand before pictures and other files.</summary>
    public const int MostBytes = 256 * 1024;

    /// <summary>Parts deeper or later than any mail program would put the words are not looked for.</summary>
    private const int MostDepth = 12;

    private const int MostParts = 40;

    private const int MostIds = 60;

    private static readonly string[] Machines = ["bulk", "auto_reply", "junk", "list"];

    private static readonly ParserOptions Options = new() { MaxMimeDepth = MostDepth };

    /// <summary>Null when it is no mail. Never throws, whatever the bytes; they may be cut off.</summary>
    public static ReplyMail? Read(ReadOnlyMemory<byte> bytes)
    {
        using var stream = new MemoryStream(bytes.Length > MostBytes ? bytes[..MostBytes].ToArray() : bytes.ToArray());
        try
        {
            using var mail = MimeMessage.Load(Options, stream);
            return Of(mail, bytes);
        }
        catch (Exception broken) when (broken is FormatException or NotSupportedException or ArgumentException or InvalidOperationException or IOException)
        {
            // What the library says of foreign bytes; here they are expected.
            return null;
        }
    }

    private static ReplyMail Of(MimeMessage mail, ReadOnlyMemory<byte> bytes) => new(
        mail.MessageId is { Length: > 0 } id ? id : Convert.ToHexStringLower(SHA256.HashData(bytes.Span)),
        mail.From.Mailboxes.FirstOrDefault()?.Address ?? "",
        [.. new[] { mail.InReplyTo }.Concat(mail.References.Reverse()).OfType<string>().Distinct().Take(MostIds)],
        IsFromMachine(mail),
        Words(mail).Split('\n'));

    /// <summary>RFC 3834 section 2, and what came before it.</summary>
    private static bool IsFromMachine(MimeMessage mail)
    {
        string? Head(string name) => mail.Headers[name]?.Trim().ToLowerInvariant();
        return Head("Auto-Submitted") is { } automatic && automatic.Split(';')[0].Trim() != "no"
            || Head("Precedence") is { } precedence && Machines.Contains(precedence)
            || Head("Return-Path") is { } back && back.Replace(" ", "", StringComparison.Ordinal) == "<>"
            || Head("X-Autoreply") is not null || Head("X-Autorespond") is not null
            || mail.Body?.ContentType.IsMimeType("multipart", "report") == true;
    }

    /// <summary>The first plain text, else the first HTML; never a file or a mail that hangs on it.</summary>
    private static string Words(MimeMessage mail)
    {
        var texts = mail.BodyParts.Take(MostParts).OfType<TextPart>().Where(part => !part.IsAttachment).ToList();
        if (texts.FirstOrDefault(part => part.IsPlain) is { } plain && plain.Text.AsSpan().Trim().Length > 0) return plain.Text;
        return texts.FirstOrDefault(part => part.IsHtml) is { } html ? HtmlWords.Of(html.Text) : "";
    }
}
