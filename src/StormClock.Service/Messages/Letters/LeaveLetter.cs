using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>An official order to leave, or a leave-by time: the order first, and no job at all.</summary>
internal sealed class LeaveLetter : ILetter
{
    public string Subject(LetterContext context) => $"{Headline(context)}: {context.Garden}";

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead($"{Headline(context)}. The official order comes before everything else."),
        new Paragraph($"Leave: {ReasonWords.Because(context.Brief.Reason, context.Brief.Units, context.Times)}."),
        .. Silence.Of(context),
        new Paragraph(context.LeaveNow
            ? "There is no more garden work. Leave everything as it stands; no plant and no pot is worth your time now. Do not come back before the officials say so."
            : "Get ready to leave first. Garden work only as far as it ends well before that hour; what is not done then stays undone. Do not come back before the officials say so."),
        .. SmallSections.Cautions(context),
        SmallSections.Next(context, SmallSections.OfficialWord),
    ];

    private static string Headline(LetterContext context) =>
        context.LeaveNow ? "Leave now" : $"Leave by {context.Times.Exact(context.Brief.LeaveBy!.Value)}";
}
