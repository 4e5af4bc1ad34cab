using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Replies;

/// <summary>
/// The one short mail about an answer that was not taken, or not whole. It goes through the outbox like every message, and may
/// itself be answered: it names the message that the first answer was to.
/// </summary>
internal static class ReplyNotice
{
    /// <summary>Stands in the place of a garden's id: no decision about a garden withdraws it, and no id has blanks.</summary>
    public const string Owner = "answers by mail";

    /// <summary>Later than this the writer has asked otherwise or given up.</summary>
    private static readonly Duration Useful = Duration.FromHours(12);

    public static OutboxEntry Write(ReplyVerdict verdict, ReplyTold told, string markId, Instant now)
    {
        var entryId = Fingerprint.Of("reply notice", markId);
        var blocks = Blocks(verdict.Letter, told).ToList();
        var subject = told.Speech.Say(told.Taken.Count == 0 ? "reply.subject.not-taken" : "reply.subject.part");
        var thread = verdict.Letter?.Message.MessageId ?? OutboxIds.Named(Fingerprint.Of("reply thread", markId));
        return new(
            entryId,
            $"{Owner}||{entryId}",
            Reach.Mail,
            Owner,
            verdict.Letter?.PersonId ?? "",
            verdict.Outcome.ToString(),
            markId,
            [],
            new(entryId, OutboxIds.Named(entryId), thread, told.ToName, told.ToAddress, subject, TextForm.Of(blocks), HtmlForm.Of(subject, told.Speech.Tag, blocks), now) { Language = told.Speech.Tag },
            now,
            now,
            now + Useful,
            Urgent: false,
            OutboxState.Waiting,
            0,
            now,
            null,
            null);
    }

    private static IEnumerable<Block> Blocks(OutboxEntry? letter, ReplyTold told)
    {
        var speech = told.Speech;
        yield return new Lead(told.Taken.Count == 0 ? speech.Say("reply.lead.not-taken") : speech.Say("reply.lead.part", ("taken", string.Join("; ", told.Taken))));
        if (letter is not null) yield return new Paragraph(speech.Say("reply.message", ("subject", letter.Message.Subject)));
        yield return new Paragraph(told.Missing);
        if (letter is null) yield return new Paragraph(speech.Say("reply.work.unknown"));
        else if (letter.JobIds.Count > 0) yield return new Paragraph(ReplyHint.Work(letter.JobIds.Count, speech));
    }
}
