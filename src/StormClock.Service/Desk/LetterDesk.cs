using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Web;

namespace StormClock.Service.Desk;

/// <summary>Turns a wanted reminder into a finished outbox entry: its words, its fixed ids, its links.</summary>
public sealed class LetterDesk(string installationId, LinkMaker links)
{
    public string InstallationId => installationId;

    public OutboxEntry Write(Reminder reminder, string cause, Instant now)
    {
        var ids = OutboxIds.For(reminder.Key, installationId);
        var letter = MessageWriter.Write(reminder, links);
        return new(
            ids.EntryId,
            reminder.Key.ToString(),
            reminder.Key.Channel,
            reminder.Key.GardenId,
            reminder.Key.PersonId,
            reminder.Key.Reason.ToString(),
            cause,
            letter.JobTokens,
            new(ids.EntryId, ids.MessageId, ids.ThreadId, reminder.To.Name, reminder.To.Email!, letter.Subject, letter.Text, letter.Html, reminder.Moment),
            now,
            reminder.Moment,
            reminder.UsefulUntil,
            reminder.Urgent,
            OutboxState.Waiting,
            0,
            reminder.Moment,
            null,
            null);
    }
}
