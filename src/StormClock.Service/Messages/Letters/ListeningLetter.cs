namespace StormClock.Service.Messages.Letters;

/// <summary>Once a week to the keeper while nothing is due: the box listens, and what it means when this stays out.</summary>
internal sealed class ListeningLetter : ILetter
{
    public string Subject(LetterContext context) => $"Listening, nothing due: {context.Garden}";

    public IReadOnlyList<Core.Reminders.BriefJob> Jobs(LetterContext context) => [];

    public IEnumerable<Block> Content(LetterContext context) =>
    [
        new Lead($"The box listens for {context.Garden}. Nothing is within reach of the forecast it has. That is no promise."),
        new Foot(context.Brief.NextBy is { } by
            ? $"Next line by {context.Times.NotBefore(by)}, unless something comes up before. If none comes, look after the box: power, network, mail."
            : "The season ends, so this is its last line. The box listens on and writes when something comes up."),
    ];
}
