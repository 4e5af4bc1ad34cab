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
            _ => Words.Of(context.Brief.Stage),
        };
        return $"{StopTime.InSubject(context)}: {topic}, {context.Garden}";
    }

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        .. StopTime.Of(context),
        .. Silence.Of(context),
        SmallSections.Stage(context),
        .. JobSection.Of("Next jobs", context),
        .. SupplySection.Of(context),
        .. LeftOutSection.Of(context),
        .. SmallSections.Changed(context),
        .. SmallSections.Cautions(context),
        .. LinkSection.Of(context),
        .. CalendarSection.Of(context),
        SmallSections.Next(context, SmallSections.Sheet),
    ];
}
