using System.Net;
using Microsoft.Extensions.Logging.Abstractions;
using StormClock.Service.Outbox;
using StormClock.Service.Settings;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Service.Tests.Wakeups;

/// <summary>The address outside is asked at its pace while all goes well, and whatever it answers harms nothing.</summary>
public sealed class SignOfLifeTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly StormStore store;
    private readonly TestClock clock = new(Entries.Start);
    private readonly Asked asked = new();

    public SignOfLifeTests() => store = StormStore.Open(folder.Path);

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Fact]
    public void Tell_EveryMinute_AsksAtItsPace()
    {
        var sign = Sign(new(new("https://watch.example.org/x"), Duration.FromMinutes(5)));
        for (var i = 0; i < 11; i++, clock.Advance(Duration.FromMinutes(1))) sign.Tell();
        Assert.Equal(Enumerable.Repeat("GET https://watch.example.org/x", 3), asked.Requests);
    }

    [Theory]
    [InlineData(500, false)]
    [InlineData(302, false)]
    [InlineData(0, true)]
    public void Tell_AnsweredBadlyOrNotAtAll_GoesOn(int status, bool fails)
    {
        asked.Answer = () => fails ? throw new HttpRequestException("no network") : new((HttpStatusCode)status);
        var sign = Sign(new(new("https://watch.example.org/x"), Duration.FromMinutes(5)));
        for (var i = 0; i < 2; i++, clock.Advance(Duration.FromMinutes(5))) sign.Tell();
        Assert.Equal(2, asked.Requests.Count);
    }

    /// <summary>A sender that is dead is no sign of life: whoever watches must learn of it.</summary>
    [Theory]
    [InlineData(30, 1)]
    [InlineData(31, 0)]
    public async Task Tell_MessagesDoNotGoOut_IsSilent(int minutes, int asks)
    {
        await store.WriteAsync(transaction => OutboxTable.Insert(transaction, Entries.Make("waits")), TestContext.Current.CancellationToken);
        clock.Advance(Duration.FromMinutes(minutes));
        Sign(new(new("https://watch.example.org/x"), Duration.FromMinutes(5))).Tell();
        Assert.Equal(asks, asked.Requests.Count);
    }

    [Fact]
    public void Tell_NotSetUp_AsksNobody()
    {
        Sign(null).Tell();
        Assert.Empty(asked.Requests);
    }

    private SignOfLife Sign(HeartbeatSettings? settings) => new(settings, new HttpClient(asked), store, clock, NullLogger<SignOfLife>.Instance);

    private sealed class Asked : HttpMessageHandler
    {
        public List<string> Requests { get; } = [];

        public Func<HttpResponseMessage> Answer { get; set; } = () => new(HttpStatusCode.OK);

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            Requests.Add($"{request.Method} {request.RequestUri}");
            return Task.FromResult(Answer());
        }
    }
}
