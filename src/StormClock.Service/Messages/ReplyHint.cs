using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>Says how a message is answered by mail. No sentence of it is itself an answer, in case a mail program quotes it unmarked.</summary>
internal static class ReplyHint
{
    /// <param name="jobs">How many the message shows.</param>
    public static string Work(int jobs, Speech speech) => speech.Say(
        jobs switch
        {
            1 => "reply.work.one",
            2 => "reply.work.two",
            _ => "reply.work.many",
        });
}
