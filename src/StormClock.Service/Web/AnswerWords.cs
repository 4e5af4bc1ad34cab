using StormClock.Core.Garden;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Web;

/// <summary>What was said of a job, as pages tell it.</summary>
internal static class AnswerWords
{
    /// <summary>"cannot be done, no time".</summary>
    public static string Of(LinkJob job, Speech speech) => job.Why is { } why ? $"{Words.Of(job.Progress, speech)}, {speech.Word("why", why)}" : Words.Of(job.Progress, speech);

    /// <summary>"Done: Ada, Tue 14:05"; or that nothing was said yet.</summary>
    public static string Said(LinkJob job, Times times, Speech speech) =>
        job.Progress == JobProgress.Open ? speech.Say("page.unmarked")
        : job is { By: { } by, At: { } at } ? $"{Words.Capital(Of(job, speech))}: {by}, {times.Exact(at)}"
        : Words.Capital(Of(job, speech));

    /// <summary>What the plan makes of the answer; null where that goes without saying.</summary>
    public static string? Follows(LinkJob? job, Speech speech) => job switch
    {
        { Progress: JobProgress.Later } => speech.Say("page.then.later"),
        { Why: { } why } => speech.Word("page.then", why),
        { Progress: JobProgress.Cannot } => speech.Say("page.then.cannot"),
        _ => null,
    };
}
