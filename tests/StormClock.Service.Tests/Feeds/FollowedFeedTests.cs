using StormClock.Service.Feeds.Web;

namespace StormClock.Service.Tests.Feeds;

public class FollowedFeedTests
{
    [Fact]
    public async Task Look_AddressNamedInJson_IsAskedThereAndLookedUpOnceADay()
    {
        await using var server = await StubServer.StartAsync();
        Names(server, "/grid");
        server.OnBody("/grid", Listener.Message(1));
        using var listener = Make(server);

        for (var i = 0; i < 3; i++) await NextAsync(listener);
        Assert.Equal((1, 3), (server.AskedFor("/point"), server.AskedFor("/grid")));
        Assert.Single(listener.Heard);

        listener.Time.Advance(TimeSpan.FromDays(1));
        await NextAsync(listener);
        Assert.Equal(2, server.AskedFor("/point"));
    }

    [Fact]
    public async Task Look_AddressHasMoved_IsLookedUpAgainAtTheNextLook()
    {
        await using var server = await StubServer.StartAsync();
        Names(server, "/old");
        using var listener = Make(server);
        await NextAsync(listener);
        Assert.Equal(1, listener.Health("grid").Failures);

        Names(server, "/new");
        server.OnBody("/new", Listener.Message(1));
        await NextAsync(listener);
        Assert.Single(listener.Heard);
    }

    [Theory]
    [InlineData("""{"properties":{}}""", "does not name an address")]
    [InlineData("""{"properties":{"forecastGridData":7}}""", "does not name an address")]
    [InlineData("""{"properties":""", "does not name an address")]
    [InlineData("""["properties"]""", "does not name an address")]
    [InlineData("""{"properties":{"forecastGridData":"https://elsewhere.invalid/"}}""", "leads to the host elsewhere.invalid")]
    public async Task Look_AnswerNamesNoUsableAddress_IsTold(string json, string told)
    {
        await using var server = await StubServer.StartAsync();
        server.OnBody("/point", System.Text.Encoding.UTF8.GetBytes(json));
        using var listener = Make(server);

        await NextAsync(listener);

        Assert.Contains(told, listener.Health("grid").LastError);
    }

    private static void Names(StubServer server, string path) =>
        server.OnBody("/point", System.Text.Encoding.UTF8.GetBytes($$$"""{"properties":{"forecastGridData":"{{{server.At(path)}}}"}}"""));

    private static Listener Make(StubServer server) => new(listener =>
        [new FollowedFeed(Listener.Source("grid"), server.At("/point"), ["properties", "forecastGridData"], Listener.Client(), new StormClock.Service.Desk.ProviderClock(listener.Time))]);

    private static async Task NextAsync(Listener listener)
    {
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();
    }
}
