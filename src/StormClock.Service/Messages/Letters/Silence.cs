using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>A source has fallen silent: never good news, whatever else the message is about (product.md 7.3).</summary>
internal static class Silence
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Brief.Why != ReminderReason.FeedSilent) yield break;

        yield return new Lead(
            "No fresh word has come from the forecast. Silence is not good news: the stage and the plan stand as they were. "
            + "Look up the official forecast yourself, by radio if need be.");
    }
}
