using StormClock.Service.Feeds.Web;

namespace StormClock.Service.Tests.Feeds;

/// <summary>Whatever one server does: the fault is named, nothing is lost, the other feed is heard, and the next good answer mends it.</summary>
public class FeedFaultTests
{
    /// <summary>Name of the fault, words of what the keeper is told, requests that one look makes.</summary>
    public static TheoryData<string, string, int> Table => new()
    {
        { "404", "nothing at this address (status 404)", 1 },
        { "304 that nobody asked for", "status 304", 1 },
        { "429 with Retry-After", "asked too often (status 429)", 1 },
        { "500", "in trouble (status 500)", 3 },
        { "503 with Retry-After", "in trouble (status 503)", 1 },
        { "HTML with 200", "this is", 1 },
        { "empty", "the answer is empty", 1 },
        { "truncated gzip", "cut off", 3 },
        { "truncated brotli", "cut off", 3 },
        { "unknown packing", "cut off or damaged", 3 },
        { "oversized", "larger than 4194304 bytes", 1 },
        { "compression bomb", "larger than 4194304 bytes", 1 },
        { "stall", "did not answer in time", 3 },
        { "drip", "did not answer in time", 3 },
        { "reset", "the connection broke off", 3 },
        { "wrong length", "the connection broke off", 3 },
        { "redirect loop", "redirects more than 5 times", 6 },
        { "redirect to another host", "leads to the host elsewhere.invalid", 1 },
        { "redirect to plain http", "leads to http, not https", 1 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public async Task Look_FaultThenMended_IsToldLosesNothingAndHarmsNoOther(string fault, string told, int requests)
    {
        await using var server = await StubServer.StartAsync();
        server.On("/bad", Faults.ByName[fault]);
        server.OnBody("/good", Listener.Message(1));
        using var listener = new Listener(_ =>
        [
            new MessageFeed(Listener.Source("bad"), server.At("/bad"), Listener.Client(fault is "stall" or "drip" ? 0.4 : 30)),
            new MessageFeed(Listener.Source("good"), server.At("/good"), Listener.Client()),
        ]);

        await listener.ListenAsync();

        Assert.Equal((1, 0), (listener.Health("bad").Failures, listener.Health("good").Failures));
        Assert.Contains(told, listener.Health("bad").LastError);
        Assert.Equal(["good"], listener.Heard);
        Assert.Equal(requests, server.AskedFor("/bad"));
        Assert.Contains(listener.Inbox.Troubles, trouble => trouble.StartsWith("bad", StringComparison.Ordinal));

        server.OnBody("/bad", Listener.Message(2));
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();

        Assert.Equal(["bad", "good"], listener.Heard.Order());
        Assert.Equal((0, listener.Now), (listener.Health("bad").Failures, listener.Health("bad").LastGood));
        Assert.DoesNotContain(listener.Inbox.Troubles, trouble => trouble.StartsWith("bad:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Look_ExpiredCertificate_IsRefusedWithoutFurtherTries()
    {
        using var certificate = StubServer.ExpiredCertificate();
        await using var server = await StubServer.StartAsync(certificate);
        server.OnBody("/", Listener.Message(1));
        using var listener = new Listener(_ => [new MessageFeed(Listener.Source("old"), server.At("/"), Listener.Client())]);

        await listener.ListenAsync();

        Assert.StartsWith("https:", server.At("/").AbsoluteUri);
        Assert.Contains("its certificate is not accepted", listener.Health("old").LastError);
        Assert.Empty(listener.Heard);
        Assert.Empty(server.Asked);
    }

    [Fact]
    public async Task Look_NameThatDoesNotExist_IsToldAsSuch()
    {
        using var listener = new Listener(_ => [new MessageFeed(Listener.Source("nowhere"), new("https://nowhere.invalid/"), Listener.Client())]);

        await listener.ListenAsync();

        Assert.Contains("(DNS)", listener.Health("nowhere").LastError);
    }

    [Fact]
    public async Task Look_NobodyListensAtThePort_IsToldAsSuch()
    {
        Uri at;
        await using (var server = await StubServer.StartAsync()) at = server.At("/");
        using var listener = new Listener(_ => [new MessageFeed(Listener.Source("shut"), at, Listener.Client())]);

        await listener.ListenAsync();

        Assert.Contains("no connection could be made", listener.Health("shut").LastError);
    }
}
