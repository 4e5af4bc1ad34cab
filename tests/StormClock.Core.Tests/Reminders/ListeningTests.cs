using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Reminders;

/// <summary>The weekly line to the keeper while nothing is due.</summary>
public class ListeningTests
{
    private static readonly Reach Weekly = Reach.MailOnly with { Weekly = new HashSet<string> { "kim" } };

    private static GardenBook Book => Gardens.With([Gardens.Person("ada"), Gardens.Person("kim", PersonRole.Keeper)], Gardens.Job("tie", 30));

    /// <summary>26 Mondays from 7 June to 29 November 2027, and none in the months before and after.</summary>
    [Fact]
    public void Decide_ACalmYear_IsOneLineAWeekInTheSeasonToTheKeeperAlone()
    {
        var desk = new KeptDesk(Book, Weekly);
        for (var at = Instant.FromUtc(2027, 1, 1, 0, 0); at < Instant.FromUtc(2028, 1, 1, 0, 0); at += Duration.FromHours(3)) desk.At(AdvisoryLedger.Empty, at);
        Assert.Equal(26, desk.Sent.Count);
        Assert.All(desk.Sent, sent => Assert.Equal(("kim", ReminderReason.Listening, "calm"), (sent.Reminder.To.Id, sent.Reminder.Key.Reason, sent.Reminder.Key.EpisodeId)));
        Assert.All(desk.Sent, sent => Assert.Equal((IsoDayOfWeek.Monday, 9), (sent.Reminder.Moment.InZone(Gardens.Zone).DayOfWeek, sent.Reminder.Moment.InZone(Gardens.Zone).Hour)));
        Assert.All(desk.Sent.Zip(desk.Sent.Skip(1)), pair => Assert.Equal(pair.Second.Reminder.Moment, pair.First.Reminder.Brief.NextBy));
        Assert.Null(desk.Sent[^1].Reminder.Brief.NextBy);
        Assert.Equal(desk.Sent.Count, desk.Sent.Select(sent => sent.Reminder.Key).Distinct().Count());
    }

    [Fact]
    public void Decide_NobodyIsToHearIt_NobodyDoes()
    {
        var desk = new KeptDesk(Book);
        for (var days = 0; days < 60; days++) desk.At(AdvisoryLedger.Empty, Instant.FromUtc(2027, 7, 1, 14, 0) + Duration.FromDays(days));
        Assert.Empty(desk.Sent);
    }

    /// <summary>Season by hemisphere: US NHC 1 June to 30 November, Australian BoM 1 November to 30 April (both from memory).</summary>
    [Theory]
    [InlineData(30, 5, 31, false)]
    [InlineData(30, 6, 1, true)]
    [InlineData(30, 11, 30, true)]
    [InlineData(30, 12, 1, false)]
    [InlineData(-18, 10, 31, false)]
    [InlineData(-18, 11, 1, true)]
    [InlineData(-18, 1, 15, true)]
    [InlineData(-18, 4, 30, true)]
    [InlineData(-18, 5, 1, false)]
    public void Season_ByHemisphere_Holds(double latDeg, int month, int day, bool holds) =>
        Assert.Equal(holds, StormSeason.Holds(new(latDeg, 150), new LocalDate(2027, month, day)));
}
