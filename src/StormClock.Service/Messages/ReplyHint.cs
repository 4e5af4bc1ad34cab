namespace StormClock.Service.Messages;

/// <summary>Says how a message is answered by mail. No sentence of it is itself an answer, in case a mail program quotes it unmarked.</summary>
internal static class ReplyHint
{
    /// <param name="what">Such as "this mail".</param>
    /// <param name="jobs">How many the message shows; 0 when that is not known.</param>
    public static string Work(string what, int jobs) =>
        $"Answer {what} with: done.{Numbers(jobs)} Or with: cannot, or later. Write it in the first line, above the quoted text.";

    public static string Indoors(string what) => $"answer {what} with: in.";

    /// <summary>An example with numbers that the message shows.</summary>
    private static string Numbers(int jobs) => jobs switch
    {
        1 => "",
        2 => " For only one of the two add its number: done 2.",
        _ => " For some of the jobs add their numbers: done 1 3.",
    };
}
