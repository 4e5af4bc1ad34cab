using StormClock.Core.Acknowledgements;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>A message for a lock screen: the stop time first, one line, one link.</summary>
/// <param name="Title">The letter's subject.</param>
/// <param name="Line">What the letter says first, and the first job.</param>
/// <param name="Link">Where it is answered; null when there are no links or nothing to answer.</param>
public sealed record ShortMessage(string Title, string Line, string? Link)
{
    /// <summary>The short form of a letter already written.</summary>
    public static ShortMessage Of(Reminder reminder, MessageText letter, LinkMaker links)
    {
        IReadOnlyList<BriefJob> jobs = [.. letter.JobTokens.Select(token => reminder.Brief.Jobs.First(job => job.Token == token))];
        var after = IsAfter(reminder.Brief);
        return new(letter.Subject, Plain.Line($"{Lead(letter)} {(after ? "" : First(jobs, Speech.Of(reminder.To, reminder.Brief.Units)))}"), Answer(reminder, jobs, after, links));
    }

    private static string Lead(MessageText letter) => letter.Text.Split("\n\n")[0];

    private static string First(IReadOnlyList<BriefJob> jobs, Speech speech) => jobs.Count == 0
        ? ""
        : speech.Say("push.next", ("count", jobs.Count), ("title", Words.Title(jobs[0], speech)), ("place", Words.Place(jobs[0])));

    /// <summary>After a storm work begins with cautions, which a lock screen has no room for: no job is named there.</summary>
    private static bool IsAfter(MessageBrief brief) =>
        brief.Stage is Stage.Recheck or Stage.NothingDue || brief.Why is ReminderReason.Recheck or ReminderReason.StandDown;

    private static string? Answer(Reminder reminder, IReadOnlyList<BriefJob> jobs, bool after, LinkMaker links) => jobs.Count switch
    {
        0 => reminder.Brief is { Stage: Stage.GardenClosed, Leave: false } ? links.ForIndoors(reminder) : null,
        1 when !after => links.ForJob(reminder, jobs[0]),
        _ => links.ForAll(reminder, reminder.Brief.Stage == Stage.Recheck || reminder.Brief.Why == ReminderReason.Recheck ? AckPurpose.Recheck : AckPurpose.All, jobs),
    };
}
