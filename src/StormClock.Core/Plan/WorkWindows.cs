using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>When a person may do work of a class at a site: light for the class, the person's own hours, days off.</summary>
internal static class WorkWindows
{
    /// <summary>Windows between two instants, in order.</summary>
    public static IReadOnlyList<Interval> For(GardenBook book, Person person, Site site, WorkClass workClass, Instant from, Instant until) =>
        For(book, new LightHours(book), person, site, workClass, from, until);

    /// <summary>The same with light that is shared with other people and classes.</summary>
    public static IReadOnlyList<Interval> For(
        GardenBook book, LightHours lightHours, Person person, Site site, WorkClass workClass, Instant from, Instant until)
    {
        var windows = new List<Interval>();
        if (until <= from) return windows;
        var last = until.InZone(book.Zone).Date;
        for (var date = from.InZone(book.Zone).Date; date <= last; date = date.PlusDays(1))
        {
            if (person.DaysOff.Contains(date)) continue;
            if (lightHours.On(date, site, workClass) is not { } light) continue;
            foreach (var hours in OwnHours(book, person, date))
            {
                if (Overlap(Overlap(light, hours), new Interval(from, until)) is { } window) windows.Add(window);
            }
        }

        return windows;
    }

    /// <summary>No hours in the book means all day; several entries for a day hold side by side.</summary>
    private static IEnumerable<Interval> OwnHours(GardenBook book, Person person, LocalDate date)
    {
        if (person.Hours.Count == 0) return [WholeDay(book.Zone, date)];
        return person.Hours
            .Where(hours => hours.HoldsOn(date) && hours.From < hours.To)
            .OrderBy(hours => hours.From)
            .Select(hours => new Interval(
                book.Zone.AtLeniently(date + hours.From).ToInstant(), book.Zone.AtLeniently(date + hours.To).ToInstant()));
    }

    private static Interval WholeDay(DateTimeZone zone, LocalDate date) =>
        new(zone.AtStartOfDay(date).ToInstant(), zone.AtStartOfDay(date.PlusDays(1)).ToInstant());

    private static Interval? Overlap(Interval? a, Interval b)
    {
        if (a is not { } x) return null;
        var start = Instant.Max(x.Start, b.Start);
        var end = Instant.Min(x.End, b.End);
        return start < end ? new Interval(start, end) : null;
    }
}
