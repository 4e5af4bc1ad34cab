namespace StormClock.Service.Messages.Letters;

/// <summary>Somebody has not said "I am in": phone, and never go out to look.</summary>
internal sealed class NotInLetter : ILetter
{
    public string Subject(LetterContext context) => $"Phone {Names(context)}, do not go out: {context.Garden}";

    public IReadOnlyList<Core.Reminders.BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead($"Phone {Names(context)}. Do not go out."),
        new Paragraph($"The garden is closed{Since(context)}, and {Names(context)} {(context.Brief.NotHeardOf.Count == 1 ? "has" : "have")} not pressed \"I am in\". That may only mean a message not read or a phone that is off."),
        new Paragraph("Nobody goes out to look, not even a few steps. If nobody answers, phone the neighbours. If you believe that somebody is in danger, call the emergency number."),
        .. InSection.Of(context),
        .. SmallSections.Cautions(context),
        SmallSections.Next(context, SmallSections.OfficialWord),
    ];

    private static string Names(LetterContext context) => Words.Together([.. context.Brief.NotHeardOf.Select(Plain.Line)]);

    private static string Since(LetterContext context) => context.Brief.ClosedSince is { } since ? $" since {context.Times.Exact(since)}" : "";
}
