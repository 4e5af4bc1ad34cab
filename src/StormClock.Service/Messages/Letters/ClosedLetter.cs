using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages.Letters;

/// <summary>Stop: no job for anyone, stay in, the recheck comes.</summary>
internal sealed class ClosedLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("closed.subject", ("garden", context.Garden));

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say("closed.lead", ("garden", context.Garden))),
        .. Order(context),
        new Paragraph(context.Say("reason", ("stage", Words.Of(Stage.GardenClosed, context.Speech)), ("because", context.Because))),
        .. Silence.Of(context),
        new Paragraph(context.Say("closed.stay-in")),
        new Paragraph(context.Say("closed.recheck")),
        .. SmallSections.Cautions(context),
        .. InSection.Of(context),
        SmallSections.Next(context, "next.official-word"),
    ];

    private static IEnumerable<Block> Order(LetterContext context) =>
        context.Brief.Reason.Cause == StageCause.Order
            ? [new Lead(context.Say("closed.order"))]
            : [];
}
