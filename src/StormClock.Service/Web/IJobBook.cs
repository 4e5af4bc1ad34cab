using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Outbox;
using StormClock.Service.Pictures;
using StormClock.Service.Replies;
using StormClock.Service.Visits;
using StormClock.Service.Wording;

namespace StormClock.Service.Web;

/// <summary>What the pages ask of the service and tell it. Only <see cref="AnswerAsync"/> changes anything, and <see cref="SendTestAsync"/> only sends.</summary>
public interface IJobBook
{
    /// <summary>What a link's page shows now; null when the episode or the jobs are no longer known.</summary>
    Task<LinkPage?> LookAsync(AckToken token, Instant now);

    /// <summary>Takes an answer; the same answer twice is taken once.</summary>
    Task AnswerAsync(AckToken token, JobAnswer answer, Instant now);

    /// <summary>What the front page shows to this visitor.</summary>
    Task<NowPage> NowAsync(Visitor visitor, Instant now);

    /// <summary>Sends one harmless message at once; null when there is no such person or they have no address.</summary>
    Task<TestSent?> SendTestAsync(string gardenId, string personId, Instant now);

    /// <summary>The calendar of a token's person as a file; null when garden or person are no longer known.</summary>
    Task<string?> CalendarAsync(AckToken token);

    /// <summary>Whether messages go out and sources still speak.</summary>
    Task<HealthNow> HealthAsync(Instant now);
}

/// <summary>A job on a link's page with what was last said about it.</summary>
/// <param name="By">Who said it; null while open.</param>
/// <param name="Why">Why it cannot be done; null where no reason was given.</param>
public sealed record LinkJob(BriefJob Job, JobProgress Progress, string? By = null, Instant? At = null, CannotWhy? Why = null)
{
    /// <summary>Why the newest plan goes without it; null where it does not, or where there is no plan.</summary>
    public LeftReason? LeftOut { get; init; }
}

/// <summary>Whether somebody is in while the garden is closed.</summary>
/// <param name="Since">Null when nothing was heard.</param>
/// <param name="MarkToken">A signed token under which it can be said, for an installation whose messages carry no links.</param>
public sealed record PersonNow(string Name, Instant? Since, string? MarkToken = null);

/// <summary>The page behind one link.</summary>
/// <param name="Leave">An order to leave, or a leave-by time, holds: said above all else.</param>
/// <param name="PlanMovedOn">The plan has changed since the message was written.</param>
/// <param name="Jobs">Those of the link, in their order; empty on an "I am in" page.</param>
/// <param name="IndoorsSince">When this person said to be in, on such a page.</param>
public sealed record LinkPage(
    string GardenName,
    string PersonName,
    DateTimeZone Zone,
    Speech Speech,
    Stage Stage,
    bool Leave,
    Instant? LeaveBy,
    bool PlanMovedOn,
    IReadOnlyList<LinkJob> Jobs,
    IReadOnlyList<Caution> Cautions,
    Instant? IndoorsSince = null)
{
    /// <summary>The message was of an earlier spell than the one that holds, or of one that is over: marking changes no plan.</summary>
    public bool EpisodeOver { get; init; }

    /// <summary>This person said something of these jobs that can be taken back.</summary>
    public bool CanTakeBack { get; init; }

    /// <summary>Everybody else, on an "I am in" page.</summary>
    public IReadOnlyList<PersonNow> Others { get; init; } = [];
}

/// <summary>The front page.</summary>
/// <param name="Troubles">Silent or stale sources and the like, as sentences; never left out (product.md 7.3).</param>
/// <param name="Messages">Messages written as files, newest first; empty when a mail server is set up.</param>
public sealed record NowPage(IReadOnlyList<NowGarden> Gardens, IReadOnlyList<string> Troubles, IReadOnlyList<NowMessage> Messages)
{
    /// <summary>There are gardens, and the first look at the forecast after the start is still under way.</summary>
    public bool IsStarting { get; init; }

    /// <summary>The visitor looks after the installation.</summary>
    public bool IsForKeeper { get; init; }

    /// <summary>To whom a test message can be sent from here; empty where that is not offered.</summary>
    public IReadOnlyList<NowTestable> Testable { get; init; } = [];
}

/// <param name="To"><c>garden/person</c>.</param>
/// <param name="Label">Name and address.</param>
public sealed record NowTestable(string To, string Label);

/// <summary>How a test message ended.</summary>
/// <param name="Detail">Last word of the other side.</param>
public sealed record TestSent(bool Delivered, string Address, string? Detail);

public sealed record NowGarden(
    string Name,
    DateTimeZone Zone,
    Speech Speech,
    Stage Stage,
    StageReason Reason,
    bool Leave,
    Instant? LeaveBy,
    Instant? StopEarliest,
    Instant? StopLikely,
    IReadOnlyList<NowJob> Jobs)
{
    /// <summary>Its id where the visitor may enter its pages; null where not.</summary>
    public string? Door { get; init; }

    /// <summary>For the time line; null while nothing is planned.</summary>
    public PictureSubject? Picture { get; init; }

    /// <summary>Who is in; empty while the garden is not closed.</summary>
    public IReadOnlyList<PersonNow> People { get; init; } = [];

    /// <summary>Where each person's calendar is, for the keeper; empty where messages tell it.</summary>
    public IReadOnlyList<NowCalendar> Calendars { get; init; } = [];
}

/// <param name="Path">From the front page.</param>
public sealed record NowCalendar(string PersonName, string Path);

/// <param name="MarkToken">A signed token under which it can be marked, for an installation whose messages carry no links.</param>
public sealed record NowJob(BriefJob Job, string? MarkToken);

/// <param name="Zone">The zone of its garden.</param>
public sealed record NowMessage(string FileName, Instant Written, DateTimeZone Zone, string ToName, string Subject, string Text);

/// <summary>For whoever watches the box from outside.</summary>
/// <param name="Good">False when something needs the keeper.</param>
/// <param name="OldestUnsent">How long the oldest message due has waited; null when none waits.</param>
public sealed record HealthNow(bool Good, Duration? OldestUnsent, IReadOnlyList<FeedNow> Feeds)
{
    public IReadOnlyList<ChannelCount> Channels { get; init; } = [];

    /// <summary>The mailbox for answers; null where none is set up, or before the first look into it.</summary>
    public ReplyHealth? Replies { get; init; }
}

/// <param name="LastContent">Issue time of the newest content, not of the newest answer: a stale cache answers too.</param>
public sealed record FeedNow(string Name, Instant? LastContent)
{
    /// <summary>Last answer that could be used; null before the first, and for all sources together.</summary>
    public Instant? LastGood { get; init; }

    /// <summary>When what it shows was last found to differ.</summary>
    public Instant? LastChange { get; init; }

    public string? LastError { get; init; }

    public Instant? LastErrorAt { get; init; }

    /// <summary>Looks in a row that brought nothing usable.</summary>
    public int Failures { get; init; }

    /// <summary>Whether its messages' signatures are "checked", or "not checked" though there are some; null where none was seen.</summary>
    public string? Signatures { get; init; }

    /// <summary>It answers, but with content older than its limit.</summary>
    public bool Stale { get; init; }

    /// <summary>It has brought no good answer for longer than its pace allows.</summary>
    public bool Deaf { get; init; }
}
