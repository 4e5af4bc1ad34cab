using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Work before the storm: a stage rose, a work day begins, the order changed, or a source fell silent.</summary>
internal sealed class WorkLetter : ILetter
{
    public string Subject(LetterContext context)
    {
        var topic = context.Brief.Why switch
        {
            ReminderReason.WorkDay => context.Say("topic.work-day"),
            ReminderReason.OrderChanged => context.Say("topic.order-changed"),
            ReminderReason.FeedSilent => context.Say("topic.feed-silent"),
            ReminderReason.Late => context.Say("topic.late", ("count", context.Brief.Jobs.Count)),
            ReminderReason.OrderLifted => context.Say("topic.order-lifted"),
            ReminderReason.FeedHeard => context.Say("topic.feed-heard"),
            _ => Words.Of(context.Brief.Stage, context.Speech),
        };
        return context.Say("work.subject", ("stop", StopTime.InSubject(context)), ("topic", topic), ("garden", context.Garden));
    }

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        .. StopTime.Of(context),
        .. Silence.Of(context),
        .. Opening(context),
        SmallSections.Stage(context),
        .. JobSection.Of(context.Say(context.Brief.Why == ReminderReason.Late ? "jobs.heading.late" : "jobs.heading"), context),
        .. SupplySection.Of(context),
        .. LeftOutSection.Of(context),
        .. SmallSections.Changed(context),
        .. SmallSections.Cautions(context),
        .. LinkSection.Of(context),
        .. CalendarSection.Of(context),
        SmallSections.Next(context, "next.sheet"),
    ];

    private static IEnumerable<Block> Opening(LetterContext context)
    {
        if (context.Brief.Why == ReminderReason.Late)
            yield return new Paragraph(context.Say(context.Links.HasLinks ? "late.opening" : "late.opening.no-links"));
        if (context.Reminder.Key.Channel == Reach.Second)
            yield return new Paragraph(context.Say("late.second", ("person", Plain.Line(context.Reminder.To.Name))));
        if (context.Brief.Why == ReminderReason.OrderLifted)
            yield return new Paragraph(context.Say("order-lifted.opening"));
        if (context.Brief is { Why: ReminderReason.OrderChanged, Jobs.Count: 0 })
            yield return new Paragraph(context.Say("jobs.none"));
    }
}
