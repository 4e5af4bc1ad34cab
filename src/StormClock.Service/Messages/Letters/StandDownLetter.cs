namespace StormClock.Service.Messages.Letters;

/// <summary>The forecast turned away: one line, where the storm is now, and what is to be undone.</summary>
internal sealed class StandDownLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("stand-down.subject", ("garden", context.Garden));

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say("stand-down.lead", ("because", context.Because))),
        .. SmallSections.Changed(context),
        .. JobSection.Of(context.Say("stand-down.jobs"), context),
        .. SmallSections.Cautions(context),
        .. LinkSection.Of(context),
        SmallSections.Next(context, "next.sheet"),
    ];
}
