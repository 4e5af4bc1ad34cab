using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages.Letters;

/// <summary>The way to notifications, offered by mail while there is still time for such things.</summary>
internal static class PushOffer
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        var early = context.Brief is { Why: ReminderReason.StageChanged, Stage: Stage.LookOver or Stage.SlowWork, Leave: false };
        return early && context.Links.ForPush(context.Reminder) is { } link ? [new Link(context.Say("push.offer"), link)] : [];
    }
}
