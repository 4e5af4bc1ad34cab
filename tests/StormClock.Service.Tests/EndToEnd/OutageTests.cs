using StormClock.Core.Stages;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>Sources fail for two hours in the middle of the practice storm: no stage falls, people are told once, and what was missed is made up.</summary>
public class OutageTests
{
    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 8, 10);

    [Fact]
    public async Task Outage_OfTwoHours_NeverLowersAStageAndIsToldOnceAndMadeUp()
    {
        var missed = PracticeStorm.Messages.First(message => message.Issued > Begin + Duration.FromHours(3)).Issued;
        var (from, until) = (missed - Duration.FromMinutes(35), missed + Duration.FromMinutes(85));
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(Begin, channel, (from, until), "recorded storm", "alerts");
        while (service.Now < until + Duration.FromHours(2))
        {
            await service.AdvanceAsync(Duration.FromMinutes(30));
            if (service.Now < until) Assert.DoesNotContain(Sent(service), entry => entry.Reason == "FeedHeard");
        }

        var stages = service.Said.Where(said => said.Kind == "stage").Select(said => said.Stage!.Value).ToList();
        Assert.NotEmpty(stages);
        Assert.Equal(stages.Order(), stages);
        Assert.DoesNotContain(service.Said, said => said.Kind == "standdown");
        var silent = Sent(service).Where(entry => entry.Reason == "FeedSilent").ToList();
        var again = Sent(service).Where(entry => entry.Reason == "FeedHeard").ToList();
        Assert.NotEmpty(silent);
        Assert.Equal(silent.Select(entry => entry.PersonId), silent.Select(entry => entry.PersonId).Distinct());
        Assert.Equal(silent.Select(entry => entry.PersonId).Order(), again.Select(entry => entry.PersonId).Order());
        Assert.All(silent, entry => Assert.Contains("\"alerts\" and the source \"recorded storm\" have not been heard since", entry.Message.Text.Replace('\u00a0', ' ')));
        Assert.All(silent, entry => Assert.InRange(entry.Settled!.Value, from + Duration.FromMinutes(30), from + Duration.FromMinutes(90)));
        Assert.All(again, entry => Assert.InRange(entry.Settled!.Value, until, until + Duration.FromMinutes(30)));
        Assert.Equal(
            PracticeStorm.Messages.Count(message => message.Issued <= service.Now),
            service.Store.Read(StormClock.Service.Store.Advisories.All).Count);
    }

    /// <summary>In calm weather the page and the log tell it; nobody is mailed.</summary>
    [Fact]
    public async Task Outage_WhileNothingIsDue_MailsNobody()
    {
        var begin = PracticeStorm.Messages[0].Issued - Duration.FromDays(3);
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await StartAsync(begin, channel, (begin, begin + Duration.FromHours(5)), "recorded storm");
        for (var i = 0; i < 12; i++) await service.AdvanceAsync(Duration.FromMinutes(30));

        Assert.Empty(channel.Sent);
        Assert.Contains(service.Said, said => said.Kind == "trouble");
    }

    private static List<OutboxEntry> Sent(VirtualService service) => [.. service.Outbox("tern-hook").Where(entry => entry.State == OutboxState.Sent)];

    private static Task<VirtualService> StartAsync(Instant begin, TestChannel channel, (Instant From, Instant Until) outage, params string[] names) => VirtualService.StartAsync(
        begin, new GardenShelf([PracticeStorm.Garden]),
        clock => [.. names.Select((name, at) => new FailingFeed(name, new ReplayFeed(at == 0 ? PracticeStorm.Messages : [], clock), outage, clock))],
        channel, Duration.FromMinutes(30), practice: true);

    private sealed class FailingFeed(string name, IFeed feed, (Instant From, Instant Until) outage, IClock clock) : IFeed
    {
        public string Name => name;

        public Task<FeedAnswer> FetchAsync(CancellationToken cancellation) =>
            clock.GetCurrentInstant() is var now && now >= outage.From && now < outage.Until
                ? Task.FromResult(new FeedAnswer([], "no connection could be made"))
                : feed.FetchAsync(cancellation);

        public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation) => feed.TookAsync(message, understood, cancellation);
    }
}
