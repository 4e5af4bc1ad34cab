namespace StormClock.Service.Messages.Letters;

/// <summary>The forecast turned away: one line, where the storm is now, and what is to be undone.</summary>
internal sealed class StandDownLetter : ILetter
{
    public string Subject(LetterContext context) => $"Stand down: {context.Garden}";

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead($"Stand down: {ReasonWords.Because(context.Brief.Reason, context.Brief.Units, context.Times)}."),
        .. SmallSections.Changed(context),
        .. JobSection.Of("To undo", context),
        .. SmallSections.Cautions(context),
        .. LinkSection.Of(context),
        SmallSections.Next(context, SmallSections.Sheet),
    ];
}
