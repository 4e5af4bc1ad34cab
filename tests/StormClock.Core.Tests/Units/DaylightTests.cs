using CsCheck;
using NodaTime.Text;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class DaylightTests
{
    /// <summary>science.md 9, S2 to S8. Empty text = no such event.</summary>
    public static TheoryData<string, double, double, string, string, string, string, string, string, int> Days => new()
    {
        // S2: published public sun tables for London (R2), to the minute; seconds derived (D).
        { "London", 51.4733, -0.0008, "Europe/London", "2015-12-01", "2015-12-01T07:03:38Z", "2015-12-01T07:42:37Z", "2015-12-01T15:54:52Z", "", 60 },
        // S3 (D).
        { "Miami", 25.7617, -80.1918, "America/New_York", "2024-09-26", "2024-09-26T10:48:00Z", "2024-09-26T11:11:00Z", "2024-09-26T23:12:00Z", "2024-09-26T23:35:00Z", 60 },
        // S4, coast of North Carolina (D).
        { "Carolina", 35.20, -76.60, "America/New_York", "2027-09-22", "2027-09-22T10:28:57Z", "2027-09-22T10:54:18Z", "2027-09-22T23:03:27Z", "2027-09-22T23:28:45Z", 60 },
        // trade.md 11, 27: north Queensland (D).
        { "Queensland", -18.12, 146.02, "Australia/Brisbane", "2027-02-10", "", "2027-02-09T20:06:00Z", "2027-02-10T08:53:00Z", "", 120 },
        // S5: the UTC date of the rise is the day before (D).
        { "Tokyo", 35.68, 139.77, "Asia/Tokyo", "2025-09-23", "", "2025-09-22T20:29:00Z", "2025-09-23T08:37:00Z", "", 60 },
        // S7: sets after midnight (D).
        { "Reykjavik", 64.1466, -21.9426, "Atlantic/Reykjavik", "2025-06-21", "", "2025-06-21T02:55:00Z", "2025-06-22T00:04:00Z", "", 120 },
        // S8: southern summer east of the antimeridian by law (D).
        { "Suva", -18.1416, 178.4419, "Pacific/Fiji", "2025-02-01", "", "2025-01-31T17:53:00Z", "2025-02-01T06:47:00Z", "", 60 },
    };

    [Theory, MemberData(nameof(Days))]
    public void On_KnownDay_MatchesTable(
        string place, double lat, double lon, string zone, string date, string dawn, string rise, string set, string dusk, int toleranceSeconds)
    {
        var day = Daylight.On(LocalDatePattern.Iso.Parse(date).Value, new(lat, lon), DateTimeZoneProviders.Tzdb[zone]);

        AssertNear(place + " dawn", dawn, day.Civil.Up, toleranceSeconds);
        AssertNear(place + " rise", rise, day.Sun.Up, toleranceSeconds);
        AssertNear(place + " set", set, day.Sun.Down, toleranceSeconds);
        AssertNear(place + " dusk", dusk, day.Civil.Down, toleranceSeconds);
    }

    [Fact]
    public void SunAt_MeeusExample_MatchesDeclinationAndEquationOfTime()
    {
        // S1: Meeus, Astronomical Algorithms, examples 25.a and 28.a (M): 1992 October 13, 0 h.
        var (declination, equation) = Daylight.SunAt(Instant.FromUtc(1992, 10, 13, 0, 0));
        Assert.Equal(-7.7851, declination, 0.001);
        Assert.Equal(13.71, equation, 0.01);
    }

    [Fact]
    public void On_PolarSummer_SunStaysUp()
    {
        var day = InTromso(2025, 6, 21);
        Assert.Equal(new SunCrossings(SunState.AboveAllDay, null, null), day.Sun);
        Assert.Equal(SunState.AboveAllDay, day.Civil.State);
    }

    [Fact]
    public void On_PolarWinter_OnlyTwilight()
    {
        // S6 (D).
        var day = InTromso(2025, 12, 21);
        Assert.Equal(new SunCrossings(SunState.BelowAllDay, null, null), day.Sun);
        AssertNear("dawn", "2025-12-21T08:31:00Z", day.Civil.Up, 180);
        AssertNear("dusk", "2025-12-21T12:53:00Z", day.Civil.Down, 180);
    }

    [Fact]
    public void On_WhiteNight_HasSunsetButNoDusk()
    {
        var day = Daylight.On(new(2025, 6, 21), new(64.1466, -21.9426), DateTimeZoneProviders.Tzdb["Atlantic/Reykjavik"]);
        Assert.Equal(new SunCrossings(SunState.AboveAllDay, null, null), day.Civil);
    }

    [Fact]
    public void On_ClockADayAheadOfTheSun_KeepsTheLocalDate()
    {
        // Kiritimati lies at 157° W but keeps UTC+14: its noon of 10 January is 22:00 UTC on the 9th.
        var zone = DateTimeZoneProviders.Tzdb["Pacific/Kiritimati"];
        var day = Daylight.On(new(2026, 1, 10), new(1.87, -157.4), zone);
        Assert.Equal(new LocalDate(2026, 1, 10), day.Sun.Up!.Value.InZone(zone).Date);
        Assert.Equal(new LocalDate(2026, 1, 10), day.Sun.Down!.Value.InZone(zone).Date);
    }

    [Fact]
    public void On_AnyPlaceBelow60_OrdersTheDay() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[-179.9, 180], Gen.Int[0, 3650]).Sample((lat, lon, days) =>
        {
            var zone = DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(lon / 15)));
            var date = new LocalDate(2024, 1, 1).PlusDays(days);
            var day = Daylight.On(date, new(lat, lon), zone);
            Assert.True(day.Sun.Up < day.Sun.Down);
            Assert.Equal(date, day.Sun.Up!.Value.InZone(zone).Date);
            if (day.Civil.State == SunState.Crosses) Assert.True(day.Civil.Up < day.Sun.Up && day.Sun.Down < day.Civil.Down);
        });

    private static DaylightTimes InTromso(int year, int month, int day) =>
        Daylight.On(new(year, month, day), new(69.6492, 18.9553), DateTimeZoneProviders.Tzdb["Europe/Oslo"]);

    private static void AssertNear(string what, string expected, Instant? actual, int toleranceSeconds)
    {
        if (expected.Length == 0) return;
        var off = (InstantPattern.ExtendedIso.Parse(expected).Value - actual!.Value).TotalSeconds;
        Assert.True(Math.Abs(off) <= toleranceSeconds, $"{what}: expected {expected}, was {actual}");
    }
}
