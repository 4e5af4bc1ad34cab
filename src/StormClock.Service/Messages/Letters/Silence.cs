using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>A source has fallen silent: never good news, whatever else the message is about (product.md 7.3).</summary>
internal static class Silence
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Brief.Why == ReminderReason.FeedHeard)
        {
            yield return new Paragraph($"{Deaf(context)} heard again. What it said meanwhile has been taken in; the stage and the plan below go by it.");
        }

        if (context.Brief.Why != ReminderReason.FeedSilent) yield break;

        yield return new Lead(
            $"{(context.Brief.Silences.Count > 0 ? Unheard(context) : "No fresh word has come from the forecast.")} Silence is not good news: the stage and the plan stand as they were. "
            + "Look up the official forecast yourself, by radio if need be.");
    }

    private static string Unheard(LetterContext context)
    {
        var since = context.Times.Exact(context.Brief.Silences[0].Since);
        return $"{Words.Capital(Names(context.Brief.Silences))} {(context.Brief.Silences.Count == 1 ? "has" : "have")} not been heard since {since}.";
    }

    private static string Deaf(LetterContext context) =>
        $"{Words.Capital(Names(context.Brief.Silences))} {(context.Brief.Silences.Count == 1 ? "is" : "are")}";

    private static string Names(IReadOnlyList<SourceSilence> silences) => Words.Together([.. silences.Select(silence => $"the source \"{Plain.Line(silence.Source)}\"")]);
}
