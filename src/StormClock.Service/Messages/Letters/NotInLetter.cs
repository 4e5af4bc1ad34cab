using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Somebody has not said "I am in": phone, and never go out to look.</summary>
internal sealed class NotInLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("not-in.subject", ("people", Names(context)), ("garden", context.Garden));

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say("not-in.lead", ("people", Names(context)))),
        new Paragraph(context.Brief.ClosedSince is { } since
            ? context.Say("not-in.why", ("people", Names(context)), ("count", context.Brief.NotHeardOf.Count), ("time", context.Times.Exact(since)))
            : context.Say("not-in.why.no-time", ("people", Names(context)), ("count", context.Brief.NotHeardOf.Count))),
        new Paragraph(context.Say("not-in.what")),
        .. InSection.Of(context),
        .. SmallSections.Cautions(context),
        SmallSections.Next(context, "next.official-word"),
    ];

    private static string Names(LetterContext context) => Words.Together([.. context.Brief.NotHeardOf.Select(Plain.Line)], context.Speech);
}
