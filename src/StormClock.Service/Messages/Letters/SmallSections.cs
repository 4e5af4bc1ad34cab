namespace StormClock.Service.Messages.Letters;

/// <summary>The parts of a letter that are a line or a list.</summary>
internal static class SmallSections
{
    public static Block Stage(LetterContext context) => new Paragraph(
        ReasonWords.Sentence(context.Brief.Stage, context.Brief.Reason, context.Brief.Units, context.Times));

    public static IEnumerable<Block> Changed(LetterContext context) =>
        List("Changed since the last message", context.Brief.Changed.Select(Plain.Line));

    public static IEnumerable<Block> Cautions(LetterContext context) =>
        List("Take care", context.Brief.Cautions.Distinct().Select(CautionWords.Of));

    /// <summary>What to go by when the next message does not come, while there is work to do.</summary>
    public const string Sheet = "go on by the newest sheet or message you have, and by the official word";

    /// <summary>The same when nobody should be working.</summary>
    public const string OfficialWord = "go by the official word alone";

    /// <summary>When to expect the next word, and what silence means: nothing good.</summary>
    public static Block Next(LetterContext context, string meanwhile) => new Foot(
        context.Brief.NextBy is { } by
            ? $"Next message by {context.Times.NotBefore(by)}. If none comes, the box or the network may be down: {meanwhile}."
            : "This is the last message of this spell. From here on the official word alone holds.");

    private static IEnumerable<Block> List(string heading, IEnumerable<string> lines)
    {
        IReadOnlyList<string> all = [.. lines];
        return all.Count == 0 ? [] : [new Heading(heading), new Bullets(all)];
    }
}
