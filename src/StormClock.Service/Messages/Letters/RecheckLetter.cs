namespace StormClock.Service.Messages.Letters;

/// <summary>After the storm: the cautions first, then the ordered list of what to look at, undo and put right.</summary>
internal sealed class RecheckLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("recheck.subject", ("garden", context.Garden));

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say("recheck.lead")),
        .. SmallSections.Cautions(context),
        .. Silence.Of(context),
        SmallSections.Stage(context),
        new Paragraph(context.Say("recheck.look")),
        .. JobSection.Of(context.Say("recheck.jobs"), context),
        .. SupplySection.Of(context),
        .. LeftOutSection.Of(context),
        .. SmallSections.Changed(context),
        .. LinkSection.Of(context),
        SmallSections.Next(context, "next.sheet"),
    ];
}
