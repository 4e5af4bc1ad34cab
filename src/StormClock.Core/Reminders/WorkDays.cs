using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Reminders;

/// <summary>When a person's work day begins, so that the day's message comes just before it.</summary>
internal static class WorkDays
{
    private static readonly Duration Before = Duration.FromMinutes(30);

    /// <summary>Longer than the longest pause between two decisions, so that the day's message is never missed.</summary>
    private static readonly Duration Beginning = Duration.FromMinutes(20);

    /// <summary>Whether somebody's work day begins about now, so that its message is telling the plan.</summary>
    public static bool BeginsAt(GardenBook book, Instant now) =>
        book.People.Any(person => On(book, person, now.InZone(book.Zone).Date) is { } day && day.Moment <= now && now < day.Moment + Beginning);

    /// <summary>The day's message moment and the end of the day's last window; null on a day without any.</summary>
    public static (Instant Moment, Instant End)? On(GardenBook book, Person person, LocalDate date)
    {
        var from = book.Zone.AtStartOfDay(date).ToInstant();
        var until = book.Zone.AtStartOfDay(date.PlusDays(1)).ToInstant();
        var windows = WorkWindows.For(book, person, book.Sites[0], WorkClass.Ground, from, until - Duration.Epsilon);
        return windows.Count == 0 ? null : (windows[0].Start - Before, windows[^1].End);
    }

    /// <summary>A day's message is not sent this soon after another that carried the plan.</summary>
    private static readonly Duration PlanJustTold = Duration.FromHours(3);

    /// <summary>The first moment for which a day's message is not too much after the last message that carried the plan.</summary>
    public static Instant NotBefore(Situation now) =>
        (now.Announced.ChangedAt is { } changed ? Instant.Max(now.Stage.Since, changed) : now.Stage.Since) + PlanJustTold;

    /// <summary>The first message moment after an instant, within a week; null when the person never works.</summary>
    public static Instant? Next(GardenBook book, Person person, Instant after)
    {
        var today = after.InZone(book.Zone).Date;
        return Enumerable.Range(0, 8)
            .Select(days => On(book, person, today.PlusDays(days)))
            .FirstOrDefault(day => day?.Moment > after)?.Moment;
    }
}
