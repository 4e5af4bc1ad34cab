using StormClock.Core.Units;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// Times as people read them: weekday, hour and zone of the garden, in their language and by their clock. A forecast is not good to the minute, so times are
/// rounded to 15 minutes, to the careful side of what they mean, and beyond 72 hours they say "about".
/// </summary>
/// <param name="zone">The garden's zone.</param>
/// <param name="now">The moment from which the reader looks: when the message is due or the page is made.</param>
/// <param name="speech">How the reader is spoken to.</param>
public sealed class Times(DateTimeZone zone, Instant now, Speech speech)
{
    private static readonly Duration Quarter = Duration.FromMinutes(15);
    private static readonly Duration Vague = Duration.FromHours(72);

    /// <summary>Beyond this a weekday alone could be the wrong week's.</summary>
    private static readonly Duration WeekdayAlone = Duration.FromDays(6);

    /// <summary>Something to be ahead of: rounded down.</summary>
    public string Deadline(Instant at) => Estimate(at, Moments.QuarterBefore(at));

    /// <summary>Something not to be expected earlier: rounded up.</summary>
    public string NotBefore(Instant at) => Estimate(at, Moments.QuarterBefore(at + Quarter - Duration.Epsilon));

    /// <summary>A fact, such as when a source spoke or an authority's own hour: to the minute, never "about".</summary>
    public string Exact(Instant at) => Name(at);

    public bool IsPast(Instant at) => at <= now;

    private string Estimate(Instant at, Instant rounded) => at - now > Vague ? speech.Say("time.about", ("time", Name(rounded))) : Name(rounded);

    private string Name(Instant at)
    {
        var local = at.InZone(zone);
        var far = at - now > WeekdayAlone || now - at > WeekdayAlone;
        var day = far ? Dates.Day(local.Date, speech) : Dates.Weekday(local.DayOfWeek, speech);
        return $"{day} {Dates.Clock(local.TimeOfDay, speech)} {ZoneName(local)}".Replace(' ', Plain.Unbroken);
    }

    /// <summary>The abbreviation; zones that have none are named by their distance from UTC.</summary>
    private static string ZoneName(ZonedDateTime local)
    {
        var name = local.GetZoneInterval().Name;
        return char.IsLetter(name[0]) ? name : "UTC" + name;
    }
}
