using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// Days and hours in a person's language and by a person's clock. The names stand with the other words, since those of the
/// platform differ from machine to machine.
/// </summary>
internal static class Dates
{
    /// <summary><c>Tue</c>.</summary>
    public static string Weekday(IsoDayOfWeek day, Speech speech) => speech.Word("day", day);

    /// <summary><c>Tue 22 Sep</c>.</summary>
    public static string Day(LocalDate date, Speech speech) =>
        speech.Say("date", ("weekday", Weekday(date.DayOfWeek, speech)), ("day", date.Day), ("month", Month(date, speech)));

    /// <summary>The same with the shortest name of the weekday, for a drawing.</summary>
    public static string ShortDay(LocalDate date, Speech speech) =>
        speech.Say("date", ("weekday", speech.Word("day-short", date.DayOfWeek)), ("day", date.Day), ("month", Month(date, speech)));

    /// <summary><c>22 Sep 2027</c>.</summary>
    public static string Date(LocalDate date, Speech speech) =>
        speech.Say("date.year", ("day", date.Day), ("month", Month(date, speech)), ("year", date.Year));

    /// <summary><c>14:00</c> or <c>2:00 PM</c>. Noon is named, because 12 is taken for either.</summary>
    public static string Clock(LocalTime at, Speech speech)
    {
        if (speech.Clock == ClockForm.Hours24) return at.ToString("HH:mm", CultureInfo.InvariantCulture);

        var time = at.ToString("h:mm", CultureInfo.InvariantCulture);
        var key = at == LocalTime.Noon ? "clock.noon" : at.Hour < 12 ? "clock.am" : "clock.pm";
        return speech.Say(key, ("time", time));
    }

    /// <summary>A whole hour of the day on a scale, 0 to 24: short.</summary>
    public static string Hour(int hour, Speech speech)
    {
        if (speech.Clock == ClockForm.Hours24) return string.Create(CultureInfo.InvariantCulture, $"{hour:00}:00");

        return speech.Say(hour % 24 < 12 ? "hour.am" : "hour.pm", ("hour", (hour + 11) % 12 + 1));
    }

    private static string Month(LocalDate date, Speech speech) => speech.Say($"month.{date.Month}");
}
