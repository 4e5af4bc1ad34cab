using StormClock.Core.Garden;

namespace StormClock.Service.Messages.Letters;

/// <summary>Where the gardener's jobs can be had as a calendar; said only where phones can reach it.</summary>
internal static class CalendarSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Reminder.To.Role != PersonRole.Gardener || context.Links.ForCalendar(context.Reminder) is not { } address) yield break;

        yield return new Heading("In your calendar");
        yield return new Paragraph("Give your calendar program this address and it fetches your jobs by itself. Whoever has the address can read them.");
        yield return new Link("Your jobs as a calendar", address);
    }
}
