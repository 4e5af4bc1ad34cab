using StormClock.Core.Units;

namespace StormClock.Core.Garden;

/// <summary>The hours of a date in which there is light enough for a class of work (margins: science.md 7, C).</summary>
public static class WorkLight
{
    private static readonly Duration GroundMorningMargin = Duration.FromMinutes(15);
    private static readonly Duration EveningMargin = Duration.FromMinutes(30);

    /// <summary>
    /// Ground work from civil dawn + 15 min to civil dusk − 30 min; ladders, saws, sheets and carrying from sunrise to
    /// sunset − 30 min. The whole local date where it stays light; null where it stays dark, where the window would be empty,
    /// and on the few days at the polar edge that have a crossing on one side only.
    /// </summary>
    public static Interval? On(LocalDate date, GeoPoint at, DateTimeZone zone, WorkClass work)
    {
        var light = Daylight.On(date, at, zone);
        var ground = work == WorkClass.Ground;
        var (state, up, down) = ground ? light.Civil : light.Sun;
        if (state == SunState.AboveAllDay) return WholeDate(date, zone);
        if (up is null || down is null) return null;

        var start = ground ? up.Value + GroundMorningMargin : up.Value;
        var end = down.Value - EveningMargin;
        return start < end ? new Interval(start, end) : null;
    }

    private static Interval WholeDate(LocalDate date, DateTimeZone zone) =>
        new(date.AtStartOfDayInZone(zone).ToInstant(), date.PlusDays(1).AtStartOfDayInZone(zone).ToInstant());
}
