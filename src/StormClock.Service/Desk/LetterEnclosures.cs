using System.Text;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Calendars;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;
using StormClock.Service.Wording;

namespace StormClock.Service.Desk;

/// <summary>Makes a printable sheet; a test gives one that fails.</summary>
public delegate byte[] SheetPress(GardenBook book, Decision decision, Instant now, Speech speech);

/// <summary>
/// What goes with a letter, because power and network fail (product.md 6): its reader's jobs as calendar entries, and for
/// the gardener the whole plan as a sheet. Made once, when the letter is written.
/// </summary>
public sealed class LetterEnclosures(SheetPress press, Journal journal)
{
    /// <summary>Bytes; a mail with more may not get through, and the letter matters more than what goes with it.</summary>
    public const int LargestSheet = 512 * 1024;

    /// <summary>Bytes; some 200 entries.</summary>
    public const int LargestCalendar = 96 * 1024;

    /// <summary>An entry that ended this long ago needs no taking back.</summary>
    private static readonly Duration LongOver = Duration.FromDays(1);

    /// <param name="told">Names of the standing events that it carries.</param>
    public IReadOnlyList<Enclosure> For(OutboxEntry letter, GardenBook book, Decision decision, GardenCalendar calendar, Instant now, ISet<string> told)
    {
        if (letter.Channel != Reach.Mail) return [];

        var carriesWork = letter.JobIds.Count > 0
            && letter.Reason is nameof(ReminderReason.StageChanged) or nameof(ReminderReason.WorkDay) or nameof(ReminderReason.OrderChanged);
        return
        [
            .. Calendar(letter, book, carriesWork, calendar, now, told),
            .. carriesWork && decision.Plan is not null && OwnsThePlan(book, letter.PersonId) ? Sheet(letter, book, decision, now) : [],
        ];
    }

    private IEnumerable<Enclosure> Calendar(
        OutboxEntry letter, GardenBook book, bool carriesWork, GardenCalendar calendar, Instant now, ISet<string> told)
    {
        var mine = calendar.Of(letter.PersonId);
        var standing = mine.Where(entry => carriesWork && !entry.TakenBack && letter.JobIds.Contains(entry.JobId)).ToList();
        var takenBack = mine.Where(entry => entry is { TakenBack: true, Told: true } && now - entry.End < LongOver);
        IReadOnlyList<CalendarEvent> events = [.. standing, .. takenBack];
        if (events.Count == 0) return [];

        var bytes = Encoding.UTF8.GetBytes(IcsForm.ForLetter(events, book.Zone, SpeechOf(letter, book)));
        if (bytes.Length > LargestCalendar) return LeaveOut(letter, "calendar", $"it has {bytes.Length} bytes");
        told.UnionWith(standing.Select(entry => entry.Uid));
        return [new("garden-work.ics", "text/calendar; charset=utf-8; method=PUBLISH", bytes)];
    }

    private IEnumerable<Enclosure> Sheet(OutboxEntry letter, GardenBook book, Decision decision, Instant now)
    {
        try
        {
            var bytes = press(book, decision, now, SpeechOf(letter, book));
            return bytes.Length > LargestSheet
                ? LeaveOut(letter, "sheet", $"it has {bytes.Length} bytes")
                : [new("storm-plan.pdf", "application/pdf", bytes)];
        }
        catch (Exception fault)
        {
            // Whatever is wrong with the sheet, the letter goes.
            return LeaveOut(letter, "sheet", $"{fault.GetType().Name}: {fault.Message}");
        }
    }

    private IEnumerable<Enclosure> LeaveOut(OutboxEntry letter, string what, string why)
    {
        journal.Write(new(letter.Written, "trouble", letter.GardenId, Reason: $"left out: {why}", To: letter.PersonId, Subject: $"the {what} of \"{letter.Message.Subject}\""));
        return [];
    }

    private static Speech SpeechOf(OutboxEntry letter, GardenBook book) =>
        Speech.Of(book.People.First(person => person.Id == letter.PersonId), book.Units);

    /// <summary>The gardener, or everybody where the book names none.</summary>
    private static bool OwnsThePlan(GardenBook book, string personId) =>
        book.People.Any(person => person.Id == personId && person.Role == PersonRole.Gardener)
        || book.People.All(person => person.Role != PersonRole.Gardener);
}
