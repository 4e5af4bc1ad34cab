using StormClock.Core.Reminders;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Delivery.Webhook;
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
        var (channel, to) = ChannelNames.Split(reminder.Key.Channel);
        return new(
            ids.EntryId,
            reminder.Key.ToString(),
            channel,
            reminder.Key.GardenId,
            reminder.Key.PersonId,
            reminder.Key.Reason.ToString(),
            cause,
            letter.JobTokens,
            Message(reminder, letter, channel, to, ids),
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

    /// <summary>The same letter in the form of its channel.</summary>
    private Outgoing Message(Reminder reminder, MessageText letter, string channel, string to, OutboxIds ids)
    {
        var (address, text, html) = channel switch
        {
            PushChannel.ChannelName => (to, PushPayload.Of(Short(reminder, letter), ids.EntryId), ""),
            WebhookChannel.ChannelName => ($"{reminder.Key.GardenId}/{reminder.Key.PersonId}", WebhookBody.Of(reminder, letter, Short(reminder, letter), ids.EntryId), ""),
            _ => (reminder.Key.Channel == Reach.Second ? reminder.To.SecondEmail! : reminder.To.Email!, letter.Text, letter.Html),
        };
        var messageId = channel == Reach.Mail ? OutboxIds.Named(links.ReplyProofFor(ids.EntryId)) : ids.MessageId;
        return new(ids.EntryId, messageId, ids.ThreadId, reminder.To.Name, address, letter.Subject, text, html, reminder.Moment) { Language = letter.Language };
    }

    private ShortMessage Short(Reminder reminder, MessageText letter) => ShortMessage.Of(reminder, letter, links);
}
