using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Desk;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages.Letters;

/// <summary>One kind of message: its subject and its pieces in the order read.</summary>
internal interface ILetter
{
    string Subject(LetterContext context);

    IEnumerable<Block> Content(LetterContext context);

    /// <summary>The jobs it shows.</summary>
    IReadOnlyList<BriefJob> Jobs(LetterContext context) => context.Jobs;
}

/// <summary>What every part of a letter needs.</summary>
internal sealed class LetterContext(Reminder reminder, LinkMaker links)
{
    public Reminder Reminder => reminder;

    public MessageBrief Brief => reminder.Brief;

    public LinkMaker Links => links;

    /// <summary>The reader's language, clock and units.</summary>
    public Speech Speech { get; } = Speech.Of(reminder.To, reminder.Brief.Units);

    /// <summary>Read as from the moment at which the message is due.</summary>
    public Times Times => new(Brief.Zone, reminder.Moment, Speech);

    /// <summary>Why the stage holds, within a sentence.</summary>
    public string Because => ReasonWords.Because(Brief.Reason, Speech, Times);

    /// <summary>This message is a mail, and answers to it are read.</summary>
    public bool TakesReplies => links.TakesReplies && ChannelNames.Split(reminder.Key.Channel).Channel == Reach.Mail;

    public string Garden => Plain.Line(Brief.GardenName);

    /// <summary>An order to leave holds and names no later hour.</summary>
    public bool LeaveNow => Halt.LeaveNow(Brief.Leave, Brief.LeaveBy, reminder.Moment);

    /// <summary>A text in the reader's language.</summary>
    public string Say(string key, params ReadOnlySpan<(string Name, object Value)> values) => Speech.Say(key, values);

    /// <summary>After the storm every message about work is the recheck list, whatever called for it.</summary>
    public bool IsRecheck => Brief.Stage == Stage.Recheck || Brief.Why == ReminderReason.Recheck;

    /// <summary>The jobs that may be shown.</summary>
    public IReadOnlyList<BriefJob> Jobs => ToldWork.Keep(Brief.Jobs, ToldWork.Limit(Brief.LeaveBy, Brief.StopEarliest));
}
