using StormClock.Core.Plan;

namespace StormClock.Service.Messages.Letters;

/// <summary>What is short and must be bought.</summary>
internal static class SupplySection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Brief.Buy.Count == 0) yield break;

        yield return new Heading(context.Say("buy.heading"));
        yield return new Bullets([.. context.Brief.Buy.Select(shortage => Line(shortage, context))]);
    }

    private static string Line(Shortage shortage, LetterContext context)
    {
        string Amount(double quantity) => Amounts.Of(quantity, shortage.Unit, context.Speech);
        var by = shortage.NeededAt is { } needed ? context.Times.Deadline(needed) : null;
        return context.Say(
            by is null ? "buy.line.no-time" : context.Times.IsPast(shortage.NeededAt!.Value) ? "buy.line.now" : "buy.line",
            ("material", Words.Token(shortage.Material, context.Speech)), ("missing", Amount(shortage.Missing)), ("need", Amount(shortage.Need)), ("time", by ?? ""));
    }
}
