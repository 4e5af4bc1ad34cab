using StormClock.Service.Calendars;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Calendars;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>Calendars and what goes with letters in the real host, over retries and restarts, in the practice storm.</summary>
public sealed class CalendarServiceTests : IDisposable
{
    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 11, 0);

    private readonly TempFolder data = new();

    public void Dispose() => data.Dispose();

    /// <summary>Tried for hours, over a restart, while the plan goes on changing: every try carries the same bytes, and once it is taken they are let go.</summary>
    [Fact]
    public async Task Letter_TriedAgainAlsoAfterARestart_CarriesTheSameBytes()
    {
        var up = false;
        var channel = new TestChannel("email", (_, _) => Task.FromResult(new DeliveryOutcome(up ? DeliveryResult.Delivered : DeliveryResult.TryAgain, "as told")));
        await using (var service = await StartAsync(Begin, channel))
        {
            for (var i = 0; i < 4; i++) await service.AdvanceAsync(Duration.FromMinutes(30));
        }

        up = true;
        await using var again = await StartAsync(Begin + Duration.FromHours(2.5), channel);
        var tries = channel.Sent.GroupBy(letter => letter.EntryId).Where(letters => letters.First().Enclosures.Count == 2).ToList();
        Assert.NotEmpty(tries);
        Assert.All(tries, letters =>
        {
            Assert.True(letters.Count() >= 3);
            Assert.Single(letters.Select(letter => Convert.ToBase64String(Bytes(letter))).Distinct());
        });
        Assert.All(again.Outbox("tern-hook").Where(entry => entry.State == OutboxState.Sent), entry =>
            Assert.Empty(again.Store.Read(reader => Enclosures.Of(reader, entry.Id))));
    }

    [Fact]
    public async Task Sequence_OverARestart_GoesOnCounting()
    {
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        GardenCalendar before;
        await using (var service = await StartAsync(Begin, channel))
        {
            before = Kept(service);
            Assert.NotEmpty(before.Events);
            Assert.All(before.Events.Where(told => told.PersonId == "gardener"), told => Assert.True(told.Told));
        }

        var moved = 0;
        await using var again = await StartAsync(Begin + Duration.FromHours(5), channel);
        var after = Kept(again).Events.ToDictionary(told => told.Uid);
        Assert.All(before.Events, told =>
        {
            var now = after[told.Uid];
            Assert.Equal(now with { Told = told.Told } == told, now.Sequence == told.Sequence);
            Assert.True(now.Sequence >= told.Sequence);
            if (now.Start != told.Start) moved++;
        });
        Assert.True(moved > 0, "nothing moved in five hours");
    }

    /// <summary>The address in a real host: the person's jobs, nobody's name, and no page for a person who is not in the book.</summary>
    [Fact]
    public async Task Feed_InTheStorm_IsThePersonsJobsWithoutNames()
    {
        await using var service = await StartAsync(Begin, new TestChannel("email", DeliveryResult.Delivered));
        var key = AckKeyFile.ReadOrMake(data.File("link-keys")).Value!.Newest;
        using var client = new HttpClient { BaseAddress = service.Address };
        foreach (var person in PracticeStorm.Garden.People)
        {
            var bytes = await client.GetByteArrayAsync(CalendarLinks.Path("tern-hook", person.Id, key), TestContext.Current.CancellationToken);
            var feed = CheckedCalendar.Read(bytes);
            Assert.Null(feed.Method);
            Assert.Equal(Kept(service).Of(person.Id).Select(told => told.Uid).Order(), feed.Events.Select(told => told.Uid).Order());
            Assert.All(PracticeStorm.Garden.People, other => Assert.DoesNotContain(feed.Lines, line => line.Contains(other.Name, StringComparison.Ordinal)));
        }

        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await client.GetAsync(CalendarLinks.Path("tern-hook", "nobody", key), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await client.GetAsync(CalendarLinks.Path("elsewhere", "gardener", key), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Contains($"href=\"{CalendarLinks.Path("tern-hook", "gardener", key)}\"", await client.GetStringAsync("", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static byte[] Bytes(Outgoing letter)
    {
        using var stream = new MemoryStream();
        MimeLetter.Build(letter, Letters.From).Value!.WriteTo(stream, TestContext.Current.CancellationToken);
        return stream.ToArray();
    }

    private static GardenCalendar Kept(VirtualService service) =>
        GardenCalendar.FromJson(service.Store.Read(reader => KeptCalendars.Find(reader, "tern-hook"))!);

    private Task<VirtualService> StartAsync(Instant begin, TestChannel channel) => VirtualService.StartAsync(
        begin, new GardenShelf([PracticeStorm.Garden]), clock => [new ReplayFeed(PracticeStorm.Messages, clock)], channel, Duration.FromMinutes(30), practice: true, data.Path);
}
