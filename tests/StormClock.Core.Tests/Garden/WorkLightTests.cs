using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Garden;

public class WorkLightTests
{
    private static readonly DateTimeZone Eastern = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly GeoPoint Carolina = new(35.20, -76.60);

    [Fact]
    public void On_GroundWork_RunsFromDawnToDuskLessMargins()
    {
        // science.md 9, S4: dawn 10:28:57, dusk 23:28:45 UTC; margins 15 and 30 min (science.md 7, C).
        var window = WorkLight.On(new(2027, 9, 22), Carolina, Eastern, WorkClass.Ground)!.Value;
        AssertWithinMinute(Instant.FromUtc(2027, 9, 22, 10, 43, 57), window.Start);
        AssertWithinMinute(Instant.FromUtc(2027, 9, 22, 22, 58, 45), window.End);
    }

    [Theory]
    [InlineData(WorkClass.Ladder)]
    [InlineData(WorkClass.Saw)]
    [InlineData(WorkClass.Sheet)]
    [InlineData(WorkClass.Carry)]
    public void On_WorkThatCanFall_RunsFromSunriseToHalfAnHourBeforeSunset(WorkClass work)
    {
        // S4: rise 10:54:18, set 23:03:27 UTC.
        var window = WorkLight.On(new(2027, 9, 22), Carolina, Eastern, work)!.Value;
        AssertWithinMinute(Instant.FromUtc(2027, 9, 22, 10, 54, 18), window.Start);
        AssertWithinMinute(Instant.FromUtc(2027, 9, 22, 22, 33, 27), window.End);
    }

    [Fact]
    public void On_PolarNight_NoLadderButGroundWorkInTwilight()
    {
        var (tromso, oslo) = (new GeoPoint(69.6492, 18.9553), DateTimeZoneProviders.Tzdb["Europe/Oslo"]);
        Assert.Null(WorkLight.On(new(2025, 12, 21), tromso, oslo, WorkClass.Ladder));
        Assert.NotNull(WorkLight.On(new(2025, 12, 21), tromso, oslo, WorkClass.Ground));
    }

    [Fact]
    public void On_MidnightSun_IsTheWholeLocalDate()
    {
        var (tromso, oslo) = (new GeoPoint(69.6492, 18.9553), DateTimeZoneProviders.Tzdb["Europe/Oslo"]);
        var window = WorkLight.On(new(2025, 6, 21), tromso, oslo, WorkClass.Saw)!.Value;
        Assert.Equal(Instant.FromUtc(2025, 6, 20, 22, 0), window.Start);
        Assert.Equal(Duration.FromHours(24), window.Duration);
    }

    private static void AssertWithinMinute(Instant expected, Instant actual) =>
        Assert.True((expected - actual).TotalMinutes is > -1 and < 1, $"expected {expected}, was {actual}");
}
