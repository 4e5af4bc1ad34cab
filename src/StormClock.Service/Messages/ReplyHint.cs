namespace StormClock.Service.Messages;

/// <summary>Says how a message is answered by mail. No sentence of it is itself an answer, in case a mail program quotes it unmarked.</summary>
internal static class ReplyHint
{
    /// <param name="what">Such as "this mail".</param>
    /// <param name="jobs">How many the message shows; 0 when that is not known.</param>
    public static string Work(string what, int jobs) =>
        $"Answer {what} with: {Numbers(jobs)} In the same way: cannot, or later. Write it in the first line, above the quoted text.";

    public static string Indoors(string what) => $"answer {what} with: in.";

    /// <summary>An example with numbers that the message shows.</summary>
    private static string Numbers(int jobs) => jobs switch
    {
        1 => "done.",
        2 => "done 2, for job 2; or done alone, for both.",
        _ => "done 1 3, for jobs 1 and 3; or done alone, for all of them.",
    };
}
