using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>The parts of a letter that are a line or a list.</summary>
internal static class SmallSections
{
    /// <summary>More would be the list of jobs over again.</summary>
    private const int MostNamed = 6;

    public static Block Stage(LetterContext context) => new Paragraph(
        ReasonWords.Sentence(context.Brief.Stage, context.Brief.Reason, context.Speech, context.Times));

    public static IEnumerable<Block> Changed(LetterContext context) =>
        List(context.Say("changed.heading"), context.Brief.Changed.Select(news => context.Speech.Word("news", news.Kind, ("count", news.Jobs.Count), ("jobs", Named(news.Jobs, context)))));

    private static string Named(IReadOnlyList<BriefJob> jobs, LetterContext context)
    {
        var named = string.Join("; ", jobs.Take(MostNamed).Select(job => Words.Title(job, context.Speech)));
        return jobs.Count > MostNamed ? context.Say("news.more", ("jobs", named), ("count", jobs.Count - MostNamed)) : named;
    }

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
