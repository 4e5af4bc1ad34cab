using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The box sleeps through a part of the practice storm and wakes: it catches up with what holds now and sends no heap of old news.</summary>
public class SleptTests
{
    private static readonly Duration Sleep = Duration.FromHours(30);

    /// <summary>The last column: whether work may still be asked for after waking (the garden closes Thursday 02:15 UTC, the recheck comes Friday 15:00).</summary>
    public static TheoryData<string, string, int, bool> Sleeps => new()
    {
        { "from one day of main work into the next", "2027-09-20T08:10:00Z", 30, true },
        { "over a day's beginning and the first warnings", "2027-09-21T01:10:00Z", 30, true },
        { "through the closing of the garden", "2027-09-22T16:20:00Z", 30, false },
        { "from the last round into the recheck", "2027-09-23T12:00:00Z", 30, true },
        { "through a night of main work", "2027-09-21T02:10:00Z", 9, true },
        { "through the last round", "2027-09-22T17:30:00Z", 9, false },
    };

    [Theory]
    [MemberData(nameof(Sleeps))]
    public async Task Woken_AfterHours_SendsOneLetterAReasonAndNoneOfOldUse(string _, string begin, int hours, bool work)
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Time(begin), channel);
        var before = channel.Sent.Count;

        await service.AdvanceAsync(Duration.FromHours(hours));

        var sent = channel.Sent.Skip(before).Select(letter => service.Outbox("tern-hook").Single(entry => entry.Id == letter.EntryId)).ToList();
        Assert.NotEmpty(sent);
        Assert.All(sent.GroupBy(entry => (entry.PersonId, entry.Reason)), alike => Assert.Single(alike));
        Assert.All(sent.GroupBy(entry => entry.PersonId), heap => Assert.InRange(heap.Count(), 1, 3));
        Assert.All(sent, entry => Assert.True(service.Now < entry.UsefulUntil));
        Assert.All(sent, entry => Assert.Equal(service.Now, entry.Settled));
        if (!work) Assert.All(sent, entry => Assert.Empty(entry.JobIds));
    }

    [Fact]
    public async Task Woken_WithLettersThatCouldNotBeSentBefore_SendsNoneWhoseUseIsOver()
    {
        var up = false;
        var channel = new TestChannel("email", (_, _) => Task.FromResult(new DeliveryOutcome(up ? DeliveryResult.Delivered : DeliveryResult.TryAgain, "as told")));
        await using var service = await StartAsync(Time("2027-09-20T11:00:00Z"), channel);
        var waiting = service.Outbox("tern-hook").Where(entry => entry.State == OutboxState.Waiting).ToList();
        Assert.NotEmpty(waiting);
        Assert.All(waiting, entry => Assert.True(entry.UsefulUntil < service.Now + Sleep));

        up = true;
        await service.AdvanceAsync(Sleep);

        var now = service.Outbox("tern-hook").ToDictionary(entry => entry.Id);
        Assert.All(waiting, entry => Assert.Equal(OutboxState.Expired, now[entry.Id].State));
        Assert.All(now.Values.Where(entry => entry.State == OutboxState.Sent), entry => Assert.True(service.Now < entry.UsefulUntil));
        Assert.Contains(now.Values, entry => entry.State == OutboxState.Sent);
        Assert.Equal(waiting.Select(entry => entry.Key).Order(), service.Said.Where(said => said.Kind == "missed").Select(said => said.Key).Order());
    }

    [Fact]
    public async Task Woken_AndThenRunningOn_RepeatsNothing()
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Time("2027-09-20T03:00:00Z"), channel);
        await service.AdvanceAsync(Sleep);
        var sent = channel.Sent.Count;

        for (var i = 0; i < 6; i++) await service.AdvanceAsync(Duration.FromMinutes(1));

        Assert.Equal(sent, channel.Sent.Count);
        Assert.Equal(channel.Sent.Count, channel.Sent.Select(letter => letter.MessageId).Distinct().Count());
    }

    [Fact]
    public async Task Woken_TwiceInOneDay_TellsTheDayOnce()
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Time("2027-09-20T09:30:00Z"), channel);
        await service.AdvanceAsync(Duration.FromHours(3));
        await service.AdvanceAsync(Duration.FromHours(3));

        var days = service.Outbox("tern-hook").Where(entry => entry is { Reason: "WorkDay", State: OutboxState.Sent }).ToList();
        Assert.Equal(days.Count, days.Select(entry => entry.PersonId).Distinct().Count());
    }

    private static Task<VirtualService> StartAsync(Instant begin, TestChannel channel) => VirtualService.StartAsync(
        begin, new GardenShelf([PracticeStorm.Garden]), clock => [new ReplayFeed(PracticeStorm.Messages, clock)], channel, Duration.FromMinutes(30), practice: true);

    private static Instant Time(string text) => NodaTime.Text.InstantPattern.General.Parse(text).Value;
}
