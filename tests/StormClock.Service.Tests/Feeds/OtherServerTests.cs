using System.Net;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Web;

namespace StormClock.Service.Tests.Feeds;

/// <summary>The dialogues of a feed with a server that is not of this house.</summary>
public sealed class OtherServerTests(OtherServer server) : IClassFixture<OtherServer>
{
    [Theory]
    [InlineData("ETag", "\"v1\"", "If-None-Match")]
    [InlineData("ETag", "W/\"v1\"", "If-None-Match")]
    [InlineData("Last-Modified", "Sun, 12 Sep 2027 10:00:00 GMT", "If-Modified-Since")]
    public async Task Look_UnchangedSince_IsAskedSoAndHeardOnce(string mark, string value, string asked)
    {
        var path = $"/conditional-{mark}-{value.Length}";
        server.Always(path, OtherServer.Answer(body: Listener.Message(1), headers: (mark, value)));
        server.When(path, asked, value, OtherServer.Answer(HttpStatusCode.NotModified));
        using var listener = Make(path);

        for (var look = 0; look < 3; look++) await NextAsync(listener);

        Assert.Single(listener.Heard);
        Assert.Equal(["", value, value], server.HeaderOf(path, asked));
        Assert.Equal((0, listener.Now), (listener.Health("feed").Failures, listener.Health("feed").LastGood));
    }

    [Fact]
    public async Task Look_ChangedAfterNotModified_IsHeardToo()
    {
        server.InTurn(
            "/changing",
            OtherServer.Answer(body: Listener.Message(1), headers: ("ETag", "\"v1\"")), OtherServer.Answer(HttpStatusCode.NotModified),
            OtherServer.Answer(body: Listener.Message(2), headers: ("ETag", "\"v2\"")));
        using var listener = Make("/changing");

        for (var look = 0; look < 3; look++) await NextAsync(listener);

        Assert.Equal(2, listener.Heard.Count);
        Assert.Equal(["", "\"v1\"", "\"v1\""], server.HeaderOf("/changing", "If-None-Match"));
    }

    [Fact]
    public async Task Look_AskedTooOften_WaitsAsLongAsItIsTold()
    {
        server.InTurn("/busy", OtherServer.Answer(HttpStatusCode.TooManyRequests, headers: ("Retry-After", "1500")), OtherServer.Answer(body: Listener.Message(1)));
        using var listener = Make("/busy");

        for (var look = 0; look < 2; look++) await NextAsync(listener);
        Assert.Equal((1, 1), (server.AskedFor("/busy"), listener.Health("feed").Failures));
        await NextAsync(listener);

        Assert.Equal((2, 0), (server.AskedFor("/busy"), listener.Health("feed").Failures));
        Assert.Single(listener.Heard);
    }

    [Fact]
    public async Task Look_ServerComesRoundWithinTheTries_IsHeardInOneLook()
    {
        server.InTurn("/shaky", OtherServer.Answer(HttpStatusCode.InternalServerError), OtherServer.Answer(HttpStatusCode.BadGateway), OtherServer.Answer(body: Listener.Message(1)));
        using var listener = Make("/shaky");

        await NextAsync(listener);

        Assert.Equal((3, 0), (server.AskedFor("/shaky"), listener.Health("feed").Failures));
        Assert.Single(listener.Heard);
    }

    [Fact]
    public async Task Look_StormOfErrors_IsToldAndOverWithTheFirstGoodAnswer()
    {
        server.InTurn("/storm", [.. Enumerable.Repeat(OtherServer.Answer(HttpStatusCode.ServiceUnavailable), 9), OtherServer.Answer(body: Listener.Message(1))]);
        using var listener = Make("/storm");

        for (var look = 0; look < 3; look++) await NextAsync(listener);
        Assert.Equal((9, 3), (server.AskedFor("/storm"), listener.Health("feed").Failures));
        Assert.Contains("in trouble (status 503)", listener.Health("feed").LastError);
        await NextAsync(listener);

        Assert.Equal((10, 0), (server.AskedFor("/storm"), listener.Health("feed").Failures));
        Assert.Single(listener.Heard);
    }

    [Fact]
    public async Task Look_RedirectsInARing_EndAndOneRedirectIsFollowed()
    {
        server.Always("/ring-a", OtherServer.Answer(HttpStatusCode.Found, headers: ("Location", "/ring-b")));
        server.Always("/ring-b", OtherServer.Answer(HttpStatusCode.TemporaryRedirect, headers: ("Location", server.At("/ring-a").AbsoluteUri)));
        server.Always("/moved", OtherServer.Answer(HttpStatusCode.PermanentRedirect, headers: ("Location", "there")));
        server.Always("/there", OtherServer.Answer(body: Listener.Message(1)));
        using var ring = Make("/ring-a");
        using var moved = Make("/moved");

        await NextAsync(ring);
        await NextAsync(moved);

        Assert.Contains("redirects more than 5 times", ring.Health("feed").LastError);
        Assert.Equal(6, server.AskedFor("/ring-a") + server.AskedFor("/ring-b"));
        Assert.Single(moved.Heard);
    }

    /// <summary>A cache that goes on answering with what it had: good answers, and yet nothing new.</summary>
    [Fact]
    public async Task Look_StaleAnswer_IsHeardOnceAndCalledStaleAndNotDeaf()
    {
        var old = SigningOffice.Bytes(SigningOffice.Alert().Replace("2027-09-21", "2024-09-21"));
        server.Always("/stale", OtherServer.Answer(body: old, headers: ("Age", "86400")));
        using var listener = Make("/stale");

        for (var look = 0; look < 3; look++) await NextAsync(listener);

        var health = listener.Health("feed");
        Assert.Single(listener.Heard);
        Assert.Equal((0, listener.Now), (health.Failures, health.LastGood));
        Assert.True(health.IsStale(listener.Now, Duration.FromHours(9)));
        Assert.False(health.IsDeaf(listener.Now, FeedPace.Usual.DeafAfter));
    }

    [Theory]
    [InlineData(HttpStatusCode.NotFound, "status 404")]
    [InlineData(HttpStatusCode.Forbidden, "status 403")]
    public async Task Look_RefusedThenGood_LosesNothing(HttpStatusCode status, string told)
    {
        var path = $"/refused-{(int)status}";
        server.InTurn(path, OtherServer.Answer(status), OtherServer.Answer(body: Listener.Message(1)));
        using var listener = Make(path);

        await NextAsync(listener);
        Assert.Contains(told, listener.Health("feed").LastError);
        await NextAsync(listener);

        Assert.Single(listener.Heard);
        Assert.Equal(2, server.AskedFor(path));
    }

    private Listener Make(string path) => new(_ => [new MessageFeed(Listener.Source("feed"), server.At(path), Listener.Client())]);

    private static async Task NextAsync(Listener listener)
    {
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();
    }
}
