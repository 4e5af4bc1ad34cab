using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Once a week to the keeper while nothing is due: the box listens, and what it means when this stays out.</summary>
internal sealed class ListeningLetter : ILetter
{
    public string Subject(LetterContext context) => context.Say("listening.subject", ("garden", context.Garden));

    public IReadOnlyList<BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead(context.Say("listening.lead", ("garden", context.Garden))),
        new Foot(context.Brief.NextBy is { } by ? context.Say("listening.next", ("time", context.Times.NotBefore(by))) : context.Say("listening.last")),
    ];
}
