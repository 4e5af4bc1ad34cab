using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages.Letters;

/// <summary>Stop: no job for anyone, stay in, the recheck comes.</summary>
internal sealed class ClosedLetter : ILetter
{
    public string Subject(LetterContext context) => $"Stop now: Garden closed, {context.Garden}";

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead($"Stop now. No garden work for anyone at {context.Garden}."),
        .. Order(context),
        new Paragraph($"Garden closed: {ReasonWords.Because(context.Brief.Reason, context.Brief.Units, context.Times)}."),
        .. Silence.Of(context),
        new Paragraph("Go in and stay in. What is not done stays undone: no plant and no pot is worth going out for. "
            + "Nobody goes out to look for anybody; phone instead."),
        new Paragraph("The recheck list comes when the official end has come, the wind is down and it is light."),
        .. SmallSections.Cautions(context),
        .. InSection.Of(context),
        SmallSections.Next(context, SmallSections.OfficialWord),
    ];

    private static IEnumerable<Block> Order(LetterContext context) =>
        context.Brief.Reason.Cause == StageCause.Order
            ? [new Lead("An official order holds. Follow it before anything written here.")]
            : [];
}
