using StormClock.Core.Reminders;

namespace StormClock.Core.Tests.Reminders;

public class RationingTests
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly QuietHours Night = new(new(21, 30), new(6, 30), Zone);

    private static Instant At(int day, int hour, int minute = 0) => Zone.AtStrictly(new LocalDateTime(2027, 9, day, hour, minute)).ToInstant();

    private static Reminder Message(string occasion, Instant moment, Instant until, bool urgent = false, ReminderReason reason = ReminderReason.StageChanged) =>
        new(new("plot", "e", "ada", reason, occasion, "email"), Garden.Gardens.Person("ada"), moment, until, urgent, null!);

    [Theory]
    [InlineData(21, 21, 29, false)]
    [InlineData(21, 21, 30, true)]
    [InlineData(22, 3, 0, true)]
    [InlineData(22, 6, 30, false)]
    public void QuietHours_AcrossMidnight_EndInTheMorning(int day, int hour, int minute, bool quiet) =>
        Assert.Equal(quiet ? At(22, 6, 30) : (Instant?)null, Night.EndAfter(At(day, hour, minute)));

    /// <summary>Clocks go forward at 02:00 on 14 March 2027: the quiet hours still end at 06:30 by the clock.</summary>
    [Fact]
    public void QuietHours_OverTheChangeOfClocks_EndByTheClock() =>
        Assert.Equal(Instant.FromUtc(2027, 3, 14, 10, 30), Night.EndAfter(Instant.FromUtc(2027, 3, 14, 6, 0)));

    [Fact]
    public void Of_NotUrgentAtNight_WaitsForTheMorning()
    {
        var held = Assert.Single(Rationing.Of([Message("MainWork-1", At(21, 23), At(22, 11))], Night, new Dictionary<string, Instant>(), At(21, 23)));
        Assert.Equal(At(22, 6, 30), held.Moment);
    }

    [Fact]
    public void Of_NotUrgentAtNightWithoutUseInTheMorning_IsNotWanted() =>
        Assert.Empty(Rationing.Of([Message("MainWork-1", At(21, 23), At(22, 6))], Night, new Dictionary<string, Instant>(), At(21, 23)));

    [Fact]
    public void Of_UrgentAtNight_GoesAtOnce()
    {
        var sent = Assert.Single(Rationing.Of([Message("GardenClosed-2", At(21, 23), At(22, 6), urgent: true)], Night, new Dictionary<string, Instant>(), At(21, 23)));
        Assert.Equal(At(21, 23), sent.Moment);
    }

    [Theory]
    [InlineData(5, 1)]
    [InlineData(6, 0)]
    [InlineData(9, 0)]
    public void Of_SixSentInADay_HoldsTheSeventhBack(int sent, int wanted)
    {
        var sentAt = Enumerable.Range(0, sent).ToDictionary(i => $"plot|e|ada|OrderChanged|{i}|email", i => At(21, 8 + i));
        Assert.Equal(wanted, Rationing.Of([Message("99", At(21, 20), At(21, 23), reason: ReminderReason.OrderChanged)], null, sentAt, At(21, 20)).Count());
        // A day later there is room again; an order always goes; what was sent stays wanted.
        Assert.Single(Rationing.Of([Message("99", At(22, 20), At(22, 23), reason: ReminderReason.OrderChanged)], null, sentAt, At(22, 20)));
        Assert.Single(Rationing.Of([Message("x now", At(21, 20), At(21, 23), urgent: true, ReminderReason.Leave)], null, sentAt, At(21, 20)));
        Assert.Single(Rationing.Of([Message("0", At(21, 20), At(21, 23), reason: ReminderReason.OrderChanged)], null, sentAt, At(21, 20)));
    }

    [Theory]
    [InlineData(ReminderReason.OrderLifted)]
    [InlineData(ReminderReason.Late)]
    [InlineData(ReminderReason.NotIn)]
    public void Of_OrdersTakenBackLateWorkAndPeopleNotHeardOf_AreNotCounted(ReminderReason apart)
    {
        var sentAt = Enumerable.Range(0, 9).ToDictionary(i => $"plot|e|ada|{apart}|{i}|email", i => At(21, 8 + i));
        Assert.Single(Rationing.Of([Message("MainWork-1", At(21, 20), At(21, 23))], null, sentAt, At(21, 20)));
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(6, 0)]
    [InlineData(7, 1)]
    public void OneAWeek_AfterOneByAnyChannel_WaitsForSevenDays(int days, int wanted)
    {
        var sentAt = new Dictionary<string, Instant> { ["plot|calm|ada|Listening|2027-06-07|push:x"] = At(7, 9) };
        var line = Message("2027-06-14", At(7 + days, 9), At(9 + days, 9), reason: ReminderReason.Listening);
        Assert.Equal(wanted, Rationing.OneAWeek([line with { Key = line.Key with { EpisodeId = "calm" } }], null, sentAt, At(7 + days, 9)).Count());
    }

    [Fact]
    public void Of_OrdersAndClosedGarden_AreNotCounted()
    {
        var sentAt = Enumerable.Range(0, 9).ToDictionary(i => $"plot|e|ada|{(i % 2 == 0 ? "Leave" : "StageChanged")}|{(i % 2 == 0 ? "x" : "GardenClosed-")}{i}|email", i => At(21, 8 + i));
        Assert.Single(Rationing.Of([Message("MainWork-1", At(21, 20), At(21, 23))], null, sentAt, At(21, 20)));
    }
}
