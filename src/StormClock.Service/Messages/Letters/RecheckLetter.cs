namespace StormClock.Service.Messages.Letters;

/// <summary>After the storm: the cautions first, then the ordered list of what to look at, undo and put right.</summary>
internal sealed class RecheckLetter : ILetter
{
    public string Subject(LetterContext context) => $"Recheck: look first, lift nothing yet, {context.Garden}";

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead("Recheck. Go out only by daylight, 30 min after the last thunder, with no order to stay in, and after a look from the door."),
        .. SmallSections.Cautions(context),
        .. Silence.Of(context),
        SmallSections.Stage(context),
        new Paragraph("Look before you touch: wires, gas, leaning trees, water, sharp sheets. If there is any, stay in and call. Photograph each thing before you move it."),
        .. JobSection.Of("In this order", context),
        .. SupplySection.Of(context),
        .. LeftOutSection.Of(context),
        .. SmallSections.Changed(context),
        .. LinkSection.Of(context),
        SmallSections.Next(context, SmallSections.Sheet),
    ];
}
