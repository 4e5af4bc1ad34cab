using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>The words for tokens: what a person reads in messages and on pages.</summary>
public static class Words
{
    public static string Of(Stage stage, Speech speech) => speech.Word("stage", stage);

    /// <summary>What is done, as one says it: <c>weigh down</c>.</summary>
    public static string Of(JobKind kind, Speech speech) => speech.Word("job", kind);

    public static string Of(JobProgress progress, Speech speech) => speech.Word("progress", progress);

    /// <summary>A class of work within a sentence: <c>ladder work</c>.</summary>
    public static string Of(WorkClass work, Speech speech) => speech.Word("work", work);

    /// <summary>What a job is called: <c>Weigh down: potted lemon (4)</c>.</summary>
    public static string Title(BriefJob job, Speech speech)
    {
        var (work, item) = (Capital(Of(job.Kind, speech)), Plain.Line(job.ItemName));
        return job.Count > 1 ? speech.Say("title.many", ("work", work), ("item", item), ("count", job.Count)) : speech.Say("title", ("work", work), ("item", item));
    }

    public static string Place(BriefJob job) => Plain.Line($"{job.SiteName}, {job.AreaName}");

    /// <summary>A name of the book, e.g. of a material, as words: <c>rope_8mm</c> is "rope 8mm".</summary>
    public static string Token(string token, Speech speech) => Plain.Line(speech.Catalogue(token.Replace('_', ' ')));

    /// <summary>A unit behind a number; one that is none of ours stays as it is.</summary>
    /// <param name="count">1, or anything else for many.</param>
    public static string Unit(string unit, int count, Speech speech) =>
        speech.Has($"unit.{unit}") ? speech.Say($"unit.{unit}", ("count", count)) : Token(unit, speech);

    /// <summary>"Ada", "Ada and Bo", "Ada, Bo and Cy".</summary>
    public static string Together(IReadOnlyList<string> names, Speech speech) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => speech.Say(SoundsLikeI(names[^1]) ? "list.before-i" : "list", ("before", string.Join(", ", names.SkipLast(1))), ("last", names[^1])),
    };

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Spanish joins with another word before this sound, though not before the diphthong of "hierba".</summary>
    private static bool SoundsLikeI(string name)
    {
        var sound = name.StartsWith("h", StringComparison.OrdinalIgnoreCase) ? name[1..] : name;
        return sound.Length > 0 && "iIíÍ".Contains(sound[0], StringComparison.Ordinal) && !(sound.Length > 1 && "aeo".Contains(sound[1], StringComparison.Ordinal));
    }
}
