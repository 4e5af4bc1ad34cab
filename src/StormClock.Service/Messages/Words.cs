using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages;

/// <summary>The words for tokens: what a person reads in messages and on pages.</summary>
public static class Words
{
    public static string Of(Stage stage) => stage switch
    {
        Stage.NothingDue => "Nothing due",
        Stage.LookOver => "Look over",
        Stage.SlowWork => "Slow work",
        Stage.MainWork => "Main work",
        Stage.LastRound => "Last round",
        Stage.GardenClosed => "Garden closed",
        Stage.Recheck => "Recheck",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, null),
    };

    /// <summary>What is done, as one says it: <c>weigh down</c>.</summary>
    public static string Of(JobKind kind) => kind switch
    {
        JobKind.CoverOff => "take the cover off",
        JobKind.ReSet => "re-set",
        _ => Spaced(kind.ToString()),
    };

    public static string Of(JobProgress progress) => progress switch
    {
        JobProgress.Open => "open",
        JobProgress.Started => "started",
        JobProgress.Done => "done",
        JobProgress.Cannot => "cannot be done",
        JobProgress.Later => "later",
        _ => throw new ArgumentOutOfRangeException(nameof(progress), progress, null),
    };

    /// <summary>After "cannot be done".</summary>
    public static string Of(CannotWhy why) => why switch
    {
        CannotWhy.NoTime => "no time",
        CannotWhy.NoMaterial => "no material",
        CannotWhy.NeedsPerson => "it needs one more person",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };

    /// <summary>What a job is called: <c>Weigh down: potted lemon (4)</c>.</summary>
    public static string Title(BriefJob job) =>
        Plain.Line($"{Capital(Of(job.Kind))}: {job.ItemName}{(job.Count > 1 ? $" ({job.Count})" : "")}");

    public static string Place(BriefJob job) => Plain.Line($"{job.SiteName}, {job.AreaName}");

    /// <summary>A name of the book, e.g. of a material, as words: <c>rope_8mm</c> is "rope 8mm".</summary>
    public static string Token(string token) => Plain.Line(token.Replace('_', ' '));

    /// <summary>"Ada", "Ada and Bo", "Ada, Bo and Cy".</summary>
    public static string Together(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}",
    };

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Spaced(string name) =>
        string.Concat(name.Select((c, at) => char.IsUpper(c) && at > 0 ? $" {char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
