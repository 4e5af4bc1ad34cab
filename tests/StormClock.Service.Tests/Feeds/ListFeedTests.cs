using System.Globalization;
using StormClock.Core.Formats.Feeds;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Web;

namespace StormClock.Service.Tests.Feeds;

/// <summary>A list on a server of this machine that links to messages of the practice storm.</summary>
public sealed class ListFeedTests : IAsyncLifetime
{
    private StubServer server = null!;

    public async ValueTask InitializeAsync() => server = await StubServer.StartAsync();

    public ValueTask DisposeAsync() => server.DisposeAsync();

    [Fact]
    public async Task Look_NewEntries_AreFetchedOnceEach()
    {
        List(1, 2, 3);
        using var listener = Make();

        for (var i = 0; i < 3; i++) await NextAsync(listener);

        Assert.Equal(3, listener.Heard.Count);
        Assert.Equal([1, 1, 1], new[] { 1, 2, 3 }.Select(Fetched));
        Assert.Equal(3, server.AskedFor("/list"));
    }

    [Fact]
    public async Task Look_EntryUpdated_IsFetchedAgain()
    {
        List(1, 2);
        using var listener = Make();
        await NextAsync(listener);

        server.OnBody("/list", Atom((1, "2027-09-12T10:00:00Z"), (2, "2027-09-12T16:00:00Z")));
        await NextAsync(listener);

        Assert.Equal((1, 2), (Fetched(1), Fetched(2)));
    }

    [Fact]
    public async Task Look_ListUnchanged_StillTriesTheLinkThatFailed()
    {
        List(1, 2);
        var list = Atom((1, "2027-09-12T10:00:00Z"), (2, "2027-09-12T10:00:00Z"));
        server.On("/list", async context =>
        {
            context.Response.Headers.ETag = "\"one\"";
            if (context.Request.Headers.IfNoneMatch == "\"one\"") context.Response.StatusCode = 304;
            else await context.Response.Body.WriteAsync(list);
        });
        server.OnStatus("/2", 404);
        using var listener = Make();
        await NextAsync(listener);
        Assert.Contains("/2: there is nothing at this address", Assert.Single(listener.Inbox.Troubles));
        Assert.Equal(0, listener.Health("list").Failures);

        server.OnBody("/2", Listener.Message(2));
        await NextAsync(listener);

        Assert.Equal(2, listener.Heard.Count);
        Assert.Empty(listener.Inbox.Troubles);
        Assert.Equal((1, 2), (Fetched(1), Fetched(2)));
    }

    [Fact]
    public async Task Look_ManyNewEntries_TakesTheNewestFirstAndTheRestAtTheNextTurns()
    {
        var numbers = Enumerable.Range(1, 7).ToArray();
        foreach (var number in numbers) server.OnBody($"/{number}", Listener.Message(number));
        server.OnBody("/list", Atom([.. numbers.Select(number => (number, $"2027-09-12T{10 + number}:00:00Z"))]));
        using var listener = Make(limits => limits with { MostLinks = 3 });

        await listener.ListenAsync();
        Assert.Equal([0, 0, 0, 0, 1, 1, 1], numbers.Select(Fetched));
        listener.Time.Advance(TimeSpan.FromMinutes(1));
        await listener.ListenAsync();
        listener.Time.Advance(TimeSpan.FromMinutes(1));
        await listener.ListenAsync();

        Assert.Equal(7, listener.Heard.Count);
        Assert.All(numbers, number => Assert.Equal(1, Fetched(number)));
    }

    [Fact]
    public async Task Look_LinkToAnotherHost_IsNotAskedUnlessTheSettingsListIt()
    {
        await using var other = await StubServer.StartAsync();
        other.OnBody("/1", Listener.Message(1));
        server.OnBody("/list", AtomOf(Entry("one", "2027-09-12T10:00:00Z", other.At("/1"))));

        using var strict = Make();
        await NextAsync(strict);
        Assert.Empty(other.Asked);
        Assert.Contains("leads to the host", Assert.Single(strict.Inbox.Troubles));

        using var told = Make(hosts: other.At("/").Authority);
        await NextAsync(told);
        Assert.Single(told.Heard);
    }

    [Fact]
    public async Task Look_AfterARestart_FetchesNothingTwice()
    {
        List(1, 2);
        using var listener = Make();
        await NextAsync(listener);

        var again = new ListFeed(Listener.Source("list"), server.At("/list"), Listener.Client(), FeedIndexReader.Read, new SeenEntries(listener.Store, "list"), new GardenPlaces(listener.Gardens));
        var answer = await again.FetchAsync(TestContext.Current.CancellationToken);

        Assert.Empty(answer.Messages);
        Assert.Null(answer.Trouble);
        Assert.Equal((1, 1), (Fetched(1), Fetched(2)));
    }

    [Fact]
    public async Task Look_PageInPlaceOfTheList_IsAFailureAndTheNextListIsTakenWhole()
    {
        List(1);
        using var listener = Make();
        await NextAsync(listener);
        server.On("/list", Faults.ByName["HTML with 200"]);
        await NextAsync(listener);
        Assert.Equal(1, listener.Health("list").Failures);
        Assert.Contains("no list", listener.Health("list").LastError);

        List(1, 2);
        await NextAsync(listener);
        Assert.Equal((0, 2), (listener.Health("list").Failures, listener.Heard.Count));
    }

    [Fact]
    public async Task Look_EveryLinkFails_IsAFailureOfTheSource()
    {
        List(1, 2);
        foreach (var number in new[] { 1, 2 }) server.OnStatus($"/{number}", 500);
        using var listener = Make();

        await NextAsync(listener);

        Assert.Equal(1, listener.Health("list").Failures);
    }

    [Fact]
    public async Task Look_EmptyList_IsAGoodAnswer()
    {
        server.OnBody("/list", AtomOf());
        using var listener = Make();

        await NextAsync(listener);

        Assert.Equal((0, listener.Now), (listener.Health("list").Failures, listener.Health("list").LastGood));
    }

    /// <summary>The cyclone centre's own list holds texts of kinds that are not read beside those that are.</summary>
    [Fact]
    public async Task Look_RealListOfTheCycloneCentre_HearsItsForecastAdvisories()
    {
        server.OnBody("/list", await File.ReadAllBytesAsync(System.IO.Path.Combine(StormClock.Core.Tests.Shared.Folder("nhc-rss"), "al092022-020.index.xml"), TestContext.Current.CancellationToken));
        using var listener = Make();

        await NextAsync(listener);

        Assert.Equal(0, listener.Health("list").Failures);
        Assert.Equal(3, listener.Heard.Count);
        Assert.Empty(listener.Inbox.Troubles);
    }

    private static async Task NextAsync(Listener listener)
    {
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();
    }

    private Listener Make(Func<FetchLimits, FetchLimits>? change = null, params string[] hosts) => new(listener =>
    [
        new ListFeed(Listener.Source("list", hosts), server.At("/list"), Listener.Client(change: change), FeedIndexReader.Read, new SeenEntries(listener.Store, "list"), new GardenPlaces(listener.Gardens)),
    ]);

    private void List(params int[] numbers)
    {
        foreach (var number in numbers) server.OnBody(Path(number), Listener.Message(number));
        server.OnBody("/list", Atom([.. numbers.Select(number => (number, "2027-09-12T10:00:00Z"))]));
    }

    private int Fetched(int number) => server.AskedFor(Path(number));

    private static string Path(int number) => "/" + number.ToString(CultureInfo.InvariantCulture);

    private byte[] Atom(params (int Number, string Updated)[] entries) =>
        AtomOf([.. entries.Select(entry => Entry($"entry-{entry.Number}", entry.Updated, server.At(Path(entry.Number))))]);

    private static string Entry(string id, string updated, Uri link) =>
        $"<entry><id>urn:{id}</id><title>{id}</title><updated>{updated}</updated><link href=\"{link}\"/></entry>";

    private static byte[] AtomOf(params string[] entries) => System.Text.Encoding.UTF8.GetBytes(
        $"""<?xml version="1.0" encoding="utf-8"?><feed xmlns="http://www.w3.org/2005/Atom"><id>urn:list</id><title>Practice</title><updated>2027-09-12T10:00:00Z</updated>{string.Concat(entries)}</feed>""");
}
