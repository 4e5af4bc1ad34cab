using StormClock.Service.Outbox;
using StormClock.Service.Wording;

namespace StormClock.Service.Replies;

/// <summary>How an answer by mail ended.</summary>
public enum ReplyOutcome
{
    /// <summary>All that it says was taken.</summary>
    Taken,

    /// <summary>Part of it was; its writer is told the rest.</summary>
    TakenInPart,

    /// <summary>Something newer has been said of all these jobs since it arrived, and stands.</summary>
    Overtaken,

    NotUnderstood,

    /// <summary>The message asks for nothing that it could answer.</summary>
    NothingToAnswer,

    /// <summary>"In", but the garden is not closed.</summary>
    NotClosed,

    /// <summary>To a message whose links have run out too.</summary>
    TooOld,

    /// <summary>Our mark, but the message, its person or its jobs are known no more.</summary>
    Unknown,

    /// <summary>The same mail was taken before.</summary>
    Repeated,

    /// <summary>A machine wrote it.</summary>
    Automatic,

    /// <summary>It names no message of ours, or not as we named it.</summary>
    NoProof,

    /// <summary>It is no mail.</summary>
    Unreadable,
}

/// <summary>What became of one mail.</summary>
/// <param name="Letter">The message that it answers; null when that is not proved.</param>
/// <param name="Tell">To be told in a short mail of ours; null for nothing.</param>
internal sealed record ReplyVerdict(ReplyOutcome Outcome, OutboxEntry? Letter = null, ReplyTold? Tell = null)
{
    /// <summary>The mail was for us and is settled: it may be marked as read, or put away.</summary>
    public bool IsSettled => Letter is not null && Outcome != ReplyOutcome.Automatic;
}

/// <summary>What a short mail to the writer says.</summary>
/// <param name="ToAddress">As the garden book has it, whatever the mail said.</param>
/// <param name="Taken">Such as "done 3, 5"; empty when nothing was.</param>
/// <param name="Missing">What was not taken, and why; one sentence.</param>
/// <param name="Speech">How the writer is written to.</param>
internal sealed record ReplyTold(string ToName, string ToAddress, IReadOnlyList<string> Taken, string Missing, Speech Speech);
