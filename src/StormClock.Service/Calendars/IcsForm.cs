using System.Globalization;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Wording;

namespace StormClock.Service.Calendars;

/// <summary>Events of one person as a calendar file (RFC 5545). The same events give the same text. It rings no alarms.</summary>
public static class IcsForm
{
    private const string Product = "-//StormClock//Garden storm plan//EN";

    /// <summary>How often a calendar program should look again; many ask less often all the same.</summary>
    private const string LookAgain = "PT15M";

    /// <summary>To be enclosed in a letter (RFC 5546 3.2.1): each event replaces the one of the same name with a lower sequence.</summary>
    public static string ForLetter(IReadOnlyList<CalendarEvent> events, DateTimeZone zone, Speech speech)
    {
        var ics = Begin();
        ics.Line("METHOD", "PUBLISH");
        return End(ics, events, zone, speech, isPublished: true);
    }

    /// <summary>To be fetched again and again: everything of the person as it stands.</summary>
    public static string ForFeed(IReadOnlyList<CalendarEvent> events, string gardenName, DateTimeZone zone, Speech speech)
    {
        var ics = Begin();
        var name = speech.Say("ics.name", ("garden", Plain.Line(gardenName)));
        ics.Text("NAME", name);
        ics.Text("X-WR-CALNAME", name);
        ics.Line("REFRESH-INTERVAL;VALUE=DURATION", LookAgain);
        ics.Line("X-PUBLISHED-TTL", LookAgain);
        if (events.Count == 0) AddSomething(ics);
        return End(ics, events, zone, speech, isPublished: false);
    }

    private static IcsText Begin()
    {
        var ics = new IcsText();
        ics.Line("BEGIN", "VCALENDAR");
        ics.Line("VERSION", "2.0");
        ics.Line("PRODID", Product);
        ics.Line("CALSCALE", "GREGORIAN");
        return ics;
    }

    private static string End(IcsText ics, IReadOnlyList<CalendarEvent> events, DateTimeZone zone, Speech speech, bool isPublished)
    {
        foreach (var told in events.OrderBy(told => told.Start).ThenBy(told => told.Uid, StringComparer.Ordinal)) Add(ics, told, zone, speech, isPublished);
        ics.Line("END", "VCALENDAR");
        return ics.ToString();
    }

    private static void Add(IcsText ics, CalendarEvent told, DateTimeZone zone, Speech speech, bool isPublished)
    {
        ics.Line("BEGIN", "VEVENT");
        ics.Line("UID", told.Uid);
        ics.Time("DTSTAMP", told.ChangedAt);
        ics.Line("SEQUENCE", told.Sequence.ToString(CultureInfo.InvariantCulture));

        // A publication must name who publishes (RFC 5546); nobody is meant to answer, and nobody can.
        if (isPublished) ics.Line("ORGANIZER;CN=StormClock", $"mailto:{OutboxIds.Named("box")}");
        ics.Time("DTSTART", told.Start);
        ics.Time("DTEND", told.End);
        ics.Text("SUMMARY", told.Summary);
        ics.Text("LOCATION", told.Location);
        ics.Text("DESCRIPTION", Description(told, zone, speech));
        ics.Line("STATUS", told.TakenBack ? "CANCELLED" : "CONFIRMED");
        ics.Line("END", "VEVENT");
    }

    private static string Description(CalendarEvent told, DateTimeZone zone, Speech speech)
    {
        if (told.TakenBack) return speech.Say("ics.taken-back");

        var times = new Times(zone, told.ChangedAt, speech);
        return speech.Say("ics.last-start", ("time", times.Deadline(told.StartBy))).Replace(Plain.Unbroken, ' ');
    }

    /// <summary>A calendar must hold something (RFC 5545 3.6). A time zone shows nothing.</summary>
    private static void AddSomething(IcsText ics)
    {
        ics.Line("BEGIN", "VTIMEZONE");
        ics.Line("TZID", "Etc/UTC");
        ics.Line("BEGIN", "STANDARD");
        ics.Line("DTSTART", "19700101T000000");
        ics.Line("TZOFFSETFROM", "+0000");
        ics.Line("TZOFFSETTO", "+0000");
        ics.Line("END", "STANDARD");
        ics.Line("END", "VTIMEZONE");
    }
}
