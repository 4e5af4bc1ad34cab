using StormClock.Core.Reminders;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages.Letters;

/// <summary>What does not fit, why, and the cheap thing to do instead.</summary>
internal static class LeftOutSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Brief.LeftOut.Count == 0) yield break;

        yield return new Heading(context.Say("left-out.heading"));
        yield return new Bullets([.. context.Brief.LeftOut.Select(job => Line(job, context.Speech))]);
    }

    private static string Line(BriefJob job, Speech speech)
    {
        string[] parts =
        [
            $"{Words.Title(job, speech)}, {Words.Place(job)}",
            job.Why is { } reason ? Words.Capital(Plain.Line(LeftWords.Of(reason, speech))) : "",
            job.Fallback is { } fallback ? speech.Say("left-out.instead", ("fallback", Plain.Line(speech.Catalogue(fallback)))) : "",
        ];
        return string.Join(". ", parts.Where(part => part.Length > 0));
    }
}
