using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The mail server is dead for six hours in the middle of the storm: what is still of use then goes, the rest never does.</summary>
public class DeadServerTests
{
    [Fact]
    public async Task Server_BackAfterSixHours_GetsWhatIsStillOfUseAndNothingElse()
    {
        await using var server = new ScriptedServer(("greeting", "421 closed"));
        await using var service = await VirtualService.StartAsync(
            Instant.FromUtc(2027, 9, 20, 8, 10), new GardenShelf([PracticeStorm.Garden]), clock => [new ReplayFeed(PracticeStorm.Messages, clock)],
            new SmtpChannel(Letters.Settings(server.Port)), Duration.FromMinutes(30), practice: true);
        for (var i = 0; i < 12; i++) await service.AdvanceAsync(Duration.FromMinutes(30));
        var before = service.Outbox("tern-hook");
        var back = service.Now;
        Assert.Empty(server.Arrived);
        Assert.Contains(before, entry => entry.State == OutboxState.Waiting);
        Assert.Contains(before, entry => entry.State is OutboxState.Expired or OutboxState.Withdrawn);

        server.Follow();
        for (var i = 0; i < 3; i++) await service.AdvanceAsync(Duration.FromMinutes(30));

        var after = service.Outbox("tern-hook").ToDictionary(entry => entry.Id);
        Assert.All(before.Where(entry => entry.State == OutboxState.Waiting && entry.Moment <= back), entry => Assert.Contains(after[entry.Id].State, new[] { OutboxState.Sent, OutboxState.Withdrawn, OutboxState.Expired }));
        Assert.All(before.Where(entry => entry.State is OutboxState.Expired or OutboxState.Withdrawn), entry => Assert.Equal(0, server.Arrived.Count(id => id == $"<{entry.Message.MessageId}>")));
        var sent = after.Values.Where(entry => entry.State == OutboxState.Sent).ToList();
        Assert.Contains(sent, entry => before.Any(waited => waited.Id == entry.Id && waited.State == OutboxState.Waiting));
        Assert.All(sent, entry => Assert.True(entry.Settled < entry.UsefulUntil));
        Assert.Equal(sent.Select(entry => $"<{entry.Message.MessageId}>").Order(), server.Arrived.Order());
        Assert.All(sent.GroupBy(entry => entry.PersonId), heap => Assert.InRange(heap.Count(), 1, 3));
    }
}
