using StormClock.Core.Acknowledgements;
using StormClock.Core.Reminders;

namespace StormClock.Service.Web;

/// <summary>
/// Makes the signed links: of messages, of calendars, and to the page for notifications. The same reminder gives the same
/// links, so that a message written twice has the same bytes.
/// </summary>
/// <param name="pagesAddress">Where phones reach the pages, http or https; null when they cannot, then there are no links.</param>
/// <param name="key">The newest key.</param>
/// <param name="offersPush">Whether devices can be subscribed to notifications.</param>
/// <param name="takesReplies">Whether answers by mail are read.</param>
public sealed class LinkMaker(Uri? pagesAddress, AckKey key, bool offersPush = false, bool takesReplies = false)
{
    /// <summary>From the message's moment: a storm and the month of recheck work after it (trade.md 7).</summary>
    public static Duration Life { get; } = Duration.FromDays(35);

    public bool HasLinks => pagesAddress is not null;

    public bool TakesReplies => takesReplies;

    /// <summary>What an answer by mail to this letter brings back, always: the mailbox may be set up after the letter went out.</summary>
    public string ReplyProofFor(string letterId) => ReplyProof.Sign(letterId, key);

    /// <summary>For one job; null when there are no links.</summary>
    public string? ForJob(Reminder reminder, BriefJob job) => Link(reminder, AckPurpose.Job, job.Token);

    /// <summary>For all the jobs listed.</summary>
    /// <param name="purpose"><see cref="AckPurpose.All"/> before the storm, <see cref="AckPurpose.Recheck"/> after it.</param>
    public string? ForAll(Reminder reminder, AckPurpose purpose, IReadOnlyList<BriefJob> jobs) =>
        Link(reminder, purpose, AckList.Hash(jobs.Select(job => job.Token)));

    /// <summary>For saying "I am in" when the garden is closed.</summary>
    public string? ForIndoors(Reminder reminder) => Link(reminder, AckPurpose.Indoors, "");

    /// <summary>Where the reader's jobs can be had as a calendar; null when there are no links.</summary>
    public string? ForCalendar(Reminder reminder) =>
        pagesAddress is null ? null : Below(pagesAddress, CalendarLinks.Path(reminder.Key.GardenId, reminder.Key.PersonId, key));

    /// <summary>To the page where this person's devices are subscribed; null when there is none.</summary>
    public string? ForPush(Reminder reminder) => ForPush(reminder.Key.GardenId, reminder.Key.PersonId, reminder.Moment);

    /// <inheritdoc cref="ForPush(Reminder)"/>
    /// <param name="moment">Its life counts from here.</param>
    public string? ForPush(string gardenId, string personId, Instant moment) =>
        offersPush ? Below(pagesAddress!, $"p/{new AckToken(AckPurpose.Push, gardenId, "", personId, "", moment + Life).Sign(key)}") : null;

    private string? Link(Reminder reminder, AckPurpose purpose, string subject)
    {
        if (pagesAddress is null) return null;

        var name = reminder.Key;
        var token = new AckToken(purpose, name.GardenId, name.EpisodeId, name.PersonId, subject, reminder.Moment + Life);
        return Below(pagesAddress, $"j/{token.Sign(key)}");
    }

    private static string Below(Uri pages, string path) => $"{pages.AbsoluteUri.TrimEnd('/')}/{path}";
}
