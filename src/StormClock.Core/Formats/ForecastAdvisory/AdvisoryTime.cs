namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>Turns the text's "day/hour" into a moment, given the full date of issue.</summary>
internal static class AdvisoryTime
{
    /// <summary>The farthest a forecast point may lie after issue (science.md 1.2).</summary>
    public static readonly Duration Farthest = Duration.FromDays(6);

    /// <summary>
    /// The moment with that day of the month and that hour nearest to issue, so that a day number that rolls over the
    /// end of a month or a year is right on either side. Null when there is no such day or hour.
    /// </summary>
    public static Instant? Nearest(int day, int hourMinute, Instant issued)
    {
        var (hour, minute) = (hourMinute / 100, hourMinute % 100);
        if (hour > 23 || minute > 59) return null;

        var issueMonth = issued.InUtc().Date.ToYearMonth();
        Instant? nearest = null;
        for (var step = -1; step <= 1; step++)
        {
            var month = issueMonth.PlusMonths(step);
            if (day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(month.Year, month.Month)) continue;
            var moment = Instant.FromUtc(month.Year, month.Month, day, hour, minute);
            if (nearest is null || Gap(moment, issued) < Gap(nearest.Value, issued)) nearest = moment;
        }

        return nearest;
    }

    /// <summary>The newest of 00, 06, 12, 18 UTC at or before issue: leads count from it (science.md 1.1).</summary>
    public static Instant Synoptic(Instant issued)
    {
        var utc = issued.InUtc();
        return Instant.FromUtc(utc.Year, utc.Month, utc.Day, utc.Hour / 6 * 6, 0);
    }

    private static Duration Gap(Instant one, Instant other) => one > other ? one - other : other - one;
}
