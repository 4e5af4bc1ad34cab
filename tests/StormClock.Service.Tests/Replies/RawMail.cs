using System.Text;
using StormClock.Service.Outbox;

namespace StormClock.Service.Tests.Replies;

/// <summary>Mails as a mail program sends them.</summary>
internal static class RawMail
{
    /// <summary>An answer to a letter, above the letter's own words.</summary>
    /// <param name="heads">More lines of the head, each with its line end.</param>
    /// <param name="id">Message-ID; null makes one of the words.</param>
    public static byte[] Answer(OutboxEntry letter, string words, string heads = "", string? id = null, string? from = null, string? answersTo = null) => Bytes(
        $"""
        From: <{from ?? letter.Message.ToAddress}>
        To: <garden@example.org>
        Subject: Re: {letter.Message.Subject}
        Date: Wed, 22 Sep 2027 14:00:00 -0400
        Message-ID: <{id ?? $"{words.GetHashCode(StringComparison.Ordinal):x}.{letter.Id}@phone.example"}>
        In-Reply-To: <{answersTo ?? letter.Message.MessageId}>
        References: <{letter.Message.ThreadId}> <{answersTo ?? letter.Message.MessageId}>
        {heads}MIME-Version: 1.0
        Content-Type: text/plain; charset=utf-8

        {words}

        On Wed, Sep 22, 2027 at 1:30 PM StormClock <garden@example.org> wrote:
        {string.Join('\n', letter.Message.Text.Split('\n').Select(line => "> " + line))}
        """);

    /// <summary>With the line ends that mail has.</summary>
    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\r\n"));
}
