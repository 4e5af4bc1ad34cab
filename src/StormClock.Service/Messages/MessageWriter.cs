using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Messages.Letters;
using StormClock.Service.Web;

namespace StormClock.Service.Messages;

/// <summary>A finished message: one subject, the same content as text and as HTML.</summary>
/// <param name="Language">As BCP 47 names it.</param>
/// <param name="JobTokens">The jobs that it shows, which are those of its "all of these" link; kept with the message to know them again.</param>
public sealed record MessageText(string Subject, string Text, string Html, string Language, IReadOnlyList<string> JobTokens);

/// <summary>Puts a reminder into words (product.md 6). The same reminder and links give the same text.</summary>
public static class MessageWriter
{
    public static MessageText Write(Reminder reminder, LinkMaker links)
    {
        var context = new LetterContext(reminder, links);
        var letter = KindOf(context);
        var subject = Plain.Line(letter.Subject(context));
        IReadOnlyList<Block> blocks = [.. letter.Content(context), .. PushOffer.Of(context)];
        return new MessageText(
            subject, TextForm.Of(blocks), HtmlForm.Of(subject, context.Speech.Tag, blocks), context.Speech.Tag, [.. letter.Jobs(context).Select(job => job.Token)]);
    }

    /// <summary>An order to leave outranks a closed garden, which outranks every other reason to write.</summary>
    private static ILetter KindOf(LetterContext context)
    {
        var brief = context.Brief;
        if (context.LeaveNow || (brief.Leave && brief.Why == ReminderReason.Leave)) return new LeaveLetter();
        if (brief.Why == ReminderReason.NotIn) return new NotInLetter();
        if (brief.Why == ReminderReason.Listening) return new ListeningLetter();
        if (brief.Stage == Stage.GardenClosed || brief.Why == ReminderReason.Leave) return new ClosedLetter();
        if (brief.Why == ReminderReason.StandDown) return new StandDownLetter();

        return context.IsRecheck ? new RecheckLetter() : new WorkLetter();
    }
}
