using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages.Letters;

/// <summary>An official order to leave, or a leave-by time: the order first, and no job at all.</summary>
internal sealed class LeaveLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("leave.subject", ("headline", Headline(context)), ("garden", context.Garden));

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say(context.Brief.Reason.Cause == StageCause.LeaveByNote ? "leave.lead.note" : "leave.lead", ("headline", Headline(context)))),
        new Paragraph(context.Say("leave.reason", ("because", context.Because))),
        .. Silence.Of(context),
        new Paragraph(context.Say(context.LeaveNow ? "leave.now.what" : "leave.by.what")),
        .. SmallSections.Cautions(context),
        SmallSections.Next(context, "next.official-word"),
    ];

    private static string Headline(LetterContext context) =>
        context.LeaveNow ? context.Say("leave.now") : context.Say("leave.by", ("time", context.Times.Exact(context.Brief.LeaveBy!.Value)));
}
