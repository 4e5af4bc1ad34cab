namespace StormClock.Service.Messages.Letters;

/// <summary>The parts of a letter that are a line or a list.</summary>
internal static class SmallSections
{
    public static Block Stage(LetterContext context) => new Paragraph(
        ReasonWords.Sentence(context.Brief.Stage, context.Brief.Reason, context.Speech, context.Times));

    public static IEnumerable<Block> Changed(LetterContext context) =>
        List(context.Say("changed.heading"), context.Brief.Changed.Select(line => context.Speech.Word("news", line.Kind, ("count", line.Jobs))));

    public static IEnumerable<Block> Cautions(LetterContext context) =>
        List(context.Say("cautions.heading"), context.Brief.Cautions.Distinct().Select(caution => CautionWords.Of(caution, context.Speech)));

    /// <summary>When to expect the next word, and what silence means: nothing good.</summary>
    /// <param name="key">Says what to go by when it does not come: <c>next.sheet</c> while there is work to do, <c>next.official-word</c> when nobody should be working.</param>
    public static Block Next(LetterContext context, string key) => new Foot(
        context.Brief.NextBy is { } by ? context.Say(key, ("time", context.Times.NotBefore(by))) : context.Say("next.none"));

    private static IEnumerable<Block> List(string heading, IEnumerable<string> lines)
    {
        IReadOnlyList<string> all = [.. lines];
        return all.Count == 0 ? [] : [new Heading(heading), new Bullets(all)];
    }
}
