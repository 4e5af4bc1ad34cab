using StormClock.Core.Units;

namespace StormClock.Core.Reminders;

/// <summary>
/// The months in which tropical storms are usual (M): 1 June to 30 November north of the equator, as the US National Hurricane Center
/// has it for the Atlantic, and 1 November to 30 April south of it, as the Australian Bureau of Meteorology has it.
/// </summary>
public static class StormSeason
{
    public static bool Holds(GeoPoint at, LocalDate date) => at.LatDeg >= 0 ? date.Month is >= 6 and <= 11 : date.Month is >= 11 or <= 4;
}
