using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The clock changes under the storm: by law in spring and autumn, or because somebody sets it. Times stay right and nobody gets a heap of messages.</summary>
public partial class ChangedClockTests
{
    private static readonly Duration Step = Duration.FromMinutes(30);

    /// <summary>The practice storm by so many days later: clocks change (tz database) in New York's night before the last full day of work.</summary>
    [Theory]
    [InlineData("2027-11-07", 47, "EDT", "EST")]
    [InlineData("2028-03-12", 173, "EST", "EDT")]
    public async Task Storm_OverAChangeOfTheClocks_NamesTheZoneOfEachTimeRightly(string _, int days, string before, string after)
    {
        var later = Duration.FromDays(days);
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Instant.FromUtc(2027, 9, 20, 10, 10) + later, channel, later);
        while (service.Now < Instant.FromUtc(2027, 9, 23, 6, 0) + later) await service.AdvanceAsync(Step);

        var zone = PracticeStorm.Garden.Zone;
        var named = channel.Sent.SelectMany(letter => Named().Matches(letter.Text.Replace('\u00a0', ' ')).Select(time => (letter, time))).ToList();
        Assert.All(named, found => Assert.Equal(ZoneAt(found.time, found.letter.Dated, zone), found.time.Groups[3].Value));
        Assert.Contains(named, found => found.time.Groups[3].Value == before);
        Assert.Contains(named, found => found.time.Groups[3].Value == after);

        // As many as in a week without a change, one a work day among them.
        var work = service.Outbox("tern-hook").Where(entry => entry is { Reason: "WorkDay", State: OutboxState.Sent }).ToList();
        Assert.Equal(work.Count, work.Select(entry => (entry.PersonId, entry.Settled!.Value.InZone(zone).Date)).Distinct().Count());
        Assert.Equal(channel.Sent.Count, channel.Sent.Select(letter => letter.MessageId).Distinct().Count());
    }

    /// <summary>Set back by two hours: the next look would lie two hours and more ahead, and is taken within one interval all the same.</summary>
    [Fact]
    public async Task Clock_SetBackTwoHours_ListensWithinAnIntervalAndRepeatsNothing()
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Instant.FromUtc(2027, 9, 21, 8, 10), channel, Duration.Zero);
        for (var i = 0; i < 8; i++) await service.AdvanceAsync(Step);
        var (before, set) = (channel.Sent.Count, service.Now - Duration.FromHours(2));

        await service.SetClockAsync(set, Step, turns: 1);
        Assert.Equal(set + Step, service.Now);
        for (var i = 0; i < 8; i++) await service.AdvanceAsync(Step);

        Assert.Equal(PracticeStorm.Messages.Count(message => message.Issued <= service.Now), service.Store.Read(StormClock.Service.Store.Advisories.All).Count);
        Assert.Equal(channel.Sent.Count, channel.Sent.Select(letter => letter.MessageId).Distinct().Count());
        AssertFew(service, channel.Sent.Skip(before));
    }

    /// <summary>Set forward by three days, from main work into the storm: what holds there is told, and nothing of the days between.</summary>
    [Theory]
    [InlineData("2027-09-20T12:10:00Z")]
    [InlineData("2027-09-21T20:10:00Z")]
    public async Task Clock_SetForwardThreeDays_CatchesUpWithoutABurst(string begin)
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(NodaTime.Text.InstantPattern.General.Parse(begin).Value, channel, Duration.Zero);
        await service.AdvanceAsync(Step);
        var (before, set) = (channel.Sent.Count, service.Now + Duration.FromDays(3));

        await service.SetClockAsync(set, Duration.FromMinutes(1), turns: 1);
        for (var i = 0; i < 4; i++) await service.AdvanceAsync(Step);

        var sent = channel.Sent.Skip(before).ToList();
        AssertFew(service, sent);
        Assert.NotEmpty(sent);
        Assert.All(sent, letter => Assert.True(Entry(service, letter).Settled < Entry(service, letter).UsefulUntil));
        Assert.All(sent, letter => Assert.True(letter.Dated > set - Duration.FromHours(12)));
    }

    private static void AssertFew(VirtualService service, IEnumerable<Outgoing> sent) =>
        Assert.All(sent.GroupBy(letter => Entry(service, letter).PersonId), heap => Assert.InRange(heap.Count(), 1, 3));

    private static OutboxEntry Entry(VirtualService service, Outgoing letter) => service.Outbox("tern-hook").Single(entry => entry.Id == letter.EntryId);

    /// <summary>The zone's name at a time that a letter names by weekday: that of the three days before it or the four from it.</summary>
    private static string ZoneAt(Match time, Instant dated, DateTimeZone zone)
    {
        var day = dated.InZone(zone).Date;
        var date = Enumerable.Range(-3, 7).Select(days => day.PlusDays(days)).Single(date => date.ToString("ddd", CultureInfo.InvariantCulture) == time.Groups[1].Value);
        var at = date + NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time.Groups[2].Value).Value;
        return zone.AtLeniently(at).GetZoneInterval().Name;
    }

    private static Task<VirtualService> StartAsync(Instant begin, TestChannel channel, Duration later)
    {
        var storm = PracticeStorm.MovedBy(later);
        return VirtualService.StartAsync(begin, new GardenShelf([PracticeStorm.Garden]), clock => [new ReplayFeed(storm, clock)], channel, Step, practice: true);
    }

    [GeneratedRegex("(Mon|Tue|Wed|Thu|Fri|Sat|Sun) ([0-9]{2}:[0-9]{2}) (E[DS]T)")]
    private static partial Regex Named();
}
