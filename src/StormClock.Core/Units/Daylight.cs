namespace StormClock.Core.Units;

/// <summary>What the sun does about one height above the horizon in the course of a day.</summary>
public enum SunState
{
    /// <summary>It crosses the height at least once.</summary>
    Crosses,

    /// <summary>It stays above all day.</summary>
    AboveAllDay,

    /// <summary>It stays below all day.</summary>
    BelowAllDay,
}

/// <summary>One of the day's pairs of crossings. Near the polar edge one side alone may be missing.</summary>
public readonly record struct SunCrossings(SunState State, Instant? Up, Instant? Down);

/// <param name="Sun">Sunrise and sunset: upper edge on the horizon with usual refraction, zenith distance 90.833°.</param>
/// <param name="Civil">Civil dawn and dusk: centre 6° below the horizon.</param>
public sealed record DaylightTimes(SunCrossings Sun, SunCrossings Civil);

/// <summary>
/// Sunrise, sunset and civil twilight by the low-accuracy solar theory of Meeus, Astronomical Algorithms, ch. 25 and 28,
/// in the form used by NOAA (M, short form R; science.md 7). Good to a minute below 66° of latitude, to some five minutes near
/// the polar edge. Hills and cloud are not considered.
/// </summary>
public static class Daylight
{
    private const double RiseSetZenithDeg = 90.833;
    private const double CivilZenithDeg = 96;
    private const int Passes = 3;

    /// <summary>The crossings that belong to a calendar date as people at the place count it.</summary>
    public static DaylightTimes On(LocalDate date, GeoPoint at, DateTimeZone zone)
    {
        var midnight = MidnightOfSolarDay(date, at, zone);
        return new(Crossings(midnight, at, RiseSetZenithDeg), Crossings(midnight, at, CivilZenithDeg));
    }

    /// <summary>Declination of the sun, degrees, and equation of time (apparent less mean), minutes.</summary>
    public static (double DeclinationDeg, double EquationOfTimeMin) SunAt(Instant when)
    {
        var t = (when.ToJulianDate() - 2451545) / 36525;
        var meanLon = 280.46646 + t * (36000.76983 + 0.0003032 * t);
        var anomaly = 357.52911 + t * (35999.05029 - 0.0001537 * t);
        var eccentricity = 0.016708634 - t * (0.000042037 + 1.267e-7 * t);
        var centre = Sin(anomaly) * (1.914602 - t * (0.004817 + 1.4e-5 * t))
            + Sin(2 * anomaly) * (0.019993 - 0.000101 * t) + 0.000289 * Sin(3 * anomaly);
        var node = 125.04 - 1934.136 * t;
        var apparentLon = meanLon + centre - 0.00569 - 0.00478 * Sin(node);
        var obliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60 + 0.00256 * Cos(node);
        var declination = Degrees(Math.Asin(Sin(obliquity) * Sin(apparentLon)));

        var y = Math.Pow(Math.Tan(Radians(obliquity / 2)), 2);
        var equation = y * Sin(2 * meanLon) - 2 * eccentricity * Sin(anomaly)
            + 4 * eccentricity * y * Sin(anomaly) * Cos(2 * meanLon)
            - 0.5 * y * y * Sin(4 * meanLon) - 1.25 * eccentricity * eccentricity * Sin(2 * anomaly);
        return (declination, 4 * Degrees(equation));
    }

    /// <summary>
    /// 0 h UTC from which the sun's day is counted. Where clocks are kept far from the sun (east of the date line by law,
    /// west of it by longitude) the noon of that day would fall on another local date; then the neighbour day is meant.
    /// </summary>
    private static Instant MidnightOfSolarDay(LocalDate date, GeoPoint at, DateTimeZone zone)
    {
        var midnight = date.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant();
        var dateAtNoon = (midnight + Duration.FromHours(12 - at.LonDeg / 15)).InZone(zone).Date;
        return midnight + Duration.FromDays(Period.DaysBetween(dateAtNoon, date));
    }

    private static SunCrossings Crossings(Instant midnight, GeoPoint at, double zenithDeg)
    {
        var noonMin = 720 - 4 * at.LonDeg;
        var cosAtNoon = CosHourAngle(midnight + Duration.FromMinutes(noonMin), at, zenithDeg);
        if (cosAtNoon > 1) return new(SunState.BelowAllDay, null, null);
        if (cosAtNoon < -1) return new(SunState.AboveAllDay, null, null);
        return new(SunState.Crosses, Crossing(midnight, at, zenithDeg, +1), Crossing(midnight, at, zenithDeg, -1));
    }

    /// <param name="side">+1 for the morning, −1 for the evening.</param>
    private static Instant? Crossing(Instant midnight, GeoPoint at, double zenithDeg, int side)
    {
        var minutes = 720 - 4 * at.LonDeg;
        for (var pass = 0; pass < Passes; pass++)
        {
            var when = midnight + Duration.FromMinutes(minutes);
            var cos = CosHourAngle(when, at, zenithDeg);
            if (Math.Abs(cos) > 1) return null;
            minutes = 720 - 4 * (at.LonDeg + side * Degrees(Math.Acos(cos))) - SunAt(when).EquationOfTimeMin;
        }

        return midnight + Duration.FromMinutes(minutes);
    }

    private static double CosHourAngle(Instant when, GeoPoint at, double zenithDeg)
    {
        var declination = SunAt(when).DeclinationDeg;
        return (Cos(zenithDeg) - Sin(at.LatDeg) * Sin(declination)) / (Cos(at.LatDeg) * Cos(declination));
    }

    private static double Sin(double deg) => Math.Sin(Radians(deg));

    private static double Cos(double deg) => Math.Cos(Radians(deg));

    private static double Radians(double deg) => deg * (Math.PI / 180);

    private static double Degrees(double rad) => rad * (180 / Math.PI);
}
