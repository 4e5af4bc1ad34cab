using StormClock.Core.Garden;

namespace StormClock.Service.Messages.Letters;

/// <summary>Where the gardener's jobs can be had as a calendar; said only where phones can reach it.</summary>
internal static class CalendarSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        if (context.Reminder.To.Role != PersonRole.Gardener || context.Links.ForCalendar(context.Reminder) is not { } address) yield break;

        yield return new Heading(context.Say("calendar.heading"));
        yield return new Paragraph(context.Say("calendar.offer"));
        yield return new Link(context.Say("calendar.link"), address);
    }
}
