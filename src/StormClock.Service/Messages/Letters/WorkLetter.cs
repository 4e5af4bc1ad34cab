using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Work before the storm: a stage rose, a work day begins, the order changed, or a source fell silent.</summary>
internal sealed class WorkLetter : ILetter
{
    public string Subject(LetterContext context)
    {
        var topic = context.Brief.Why switch
        {
            ReminderReason.WorkDay => "the day's work",
            ReminderReason.OrderChanged => "the order of work changed",
            ReminderReason.FeedSilent => "the forecast is silent",
            ReminderReason.Late => context.Brief.Jobs.Count == 1 ? "one job is late" : $"{context.Brief.Jobs.Count} jobs are late",
            ReminderReason.OrderLifted => "the order to leave holds no more",
            ReminderReason.FeedHeard => "the forecast is heard again",
            _ => Words.Of(context.Brief.Stage),
        };
        return $"{StopTime.InSubject(context)}: {topic}, {context.Garden}";
    }

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        .. StopTime.Of(context),
        .. Silence.Of(context),
        .. Opening(context),
        SmallSections.Stage(context),
        .. JobSection.Of(context.Brief.Why == ReminderReason.Late ? "Late" : "Next jobs", context),
        .. SupplySection.Of(context),
        .. LeftOutSection.Of(context),
        .. SmallSections.Changed(context),
        .. SmallSections.Cautions(context),
        .. LinkSection.Of(context),
        .. CalendarSection.Of(context),
        SmallSections.Next(context, SmallSections.Sheet),
    ];

    private static IEnumerable<Block> Opening(LetterContext context)
    {
        if (context.Brief.Why == ReminderReason.Late)
            yield return new Paragraph("By the hours that were told this should be done, and nobody has said so. If it is done, press its link; if it cannot be done, say that too. Nobody works on past the hour at which work stops to catch up.");
        if (context.Reminder.Key.Channel == Reach.Second)
            yield return new Paragraph($"This comes to the second address of {Plain.Line(context.Reminder.To.Name)}, because nobody has answered.");
        if (context.Brief.Why == ReminderReason.OrderLifted)
            yield return new Paragraph("The order or the hour to leave that you were told of holds no more in what reaches this box. Look at the official word before you act on that.");
    }
}
