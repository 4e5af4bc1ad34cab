using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>What does not fit, why, and the cheap thing to do instead.</summary>
internal static class LeftOutSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Brief.LeftOut.Count == 0) yield break;

        yield return new Heading("Left out");
        yield return new Bullets([.. context.Brief.LeftOut.Select(Line)]);
    }

    private static string Line(BriefJob job)
    {
        var why = job.Why is { } reason ? $". {Words.Capital(Plain.Line(reason))}" : "";
        var instead = job.Fallback is { } fallback ? $". Instead: {Plain.Line(fallback)}" : "";
        return $"{Words.Title(job)}, {Words.Place(job)}{why}{instead}";
    }
}
