using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>A source has fallen silent: never good news, whatever else the message is about (product.md 7.3).</summary>
internal static class Silence
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        var silences = context.Brief.Silences;
        if (context.Brief.Why == ReminderReason.FeedHeard)
        {
            yield return new Paragraph(context.Say("silence.heard", ("count", silences.Count), ("sources", Names(context))));
        }

        if (context.Brief.Why != ReminderReason.FeedSilent) yield break;

        yield return new Lead(silences.Count == 0
            ? context.Say("silence.forecast")
            : context.Say("silence.sources", ("count", silences.Count), ("sources", Names(context)), ("time", context.Times.Exact(silences[0].Since))));
    }

    private static string Names(LetterContext context) => Words.Capital(Words.Together(
        [.. context.Brief.Silences.Select(silence => context.Say("silence.source", ("name", Plain.Line(silence.Source))))], context.Speech));
}
