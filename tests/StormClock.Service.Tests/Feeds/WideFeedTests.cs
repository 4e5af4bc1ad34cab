using StormClock.Core.Formats.Feeds;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Web;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Feeds;

/// <summary>A list with the alerts of a whole country: kept is what may concern a garden, and no more.</summary>
public sealed class WideFeedTests : IAsyncLifetime
{
    private readonly TempFolder gardens = new();
    private StubServer server = null!;

    public async ValueTask InitializeAsync()
    {
        server = await StubServer.StartAsync();
        server.OnBody("/list", System.Text.Encoding.UTF8.GetBytes($"""
            <feed xmlns="http://www.w3.org/2005/Atom"><title>Invented</title>
            <entry><id>near</id><content>{Alert("near", "<area><circle>30.15,-84.25 30</circle></area>")}</content></entry>
            <entry><id>far</id><content>{Alert("far", "<area><circle>45,-100 30</circle></area>")}</content></entry>
            <entry><id>unknown</id><content>{Alert("unknown", "<area><areaDesc>Somewhere</areaDesc></area>")}</content></entry>
            <entry><id>linked</id><link href="/linked"/></entry>
            </feed>
            """), headers => headers.ETag = "\"one\"");
        server.OnBody("/linked", System.Text.Encoding.UTF8.GetBytes(Alert("linked", "<area><circle>45.5,-100 30</circle></area>")));
    }

    public async ValueTask DisposeAsync()
    {
        gardens.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task Look_AlertsOfACountry_KeepsThoseThatMayConcernAGarden()
    {
        using var listener = Make(SampleBook.Good);

        await listener.ListenAsync();

        Assert.Equal(["near", "unknown"], Known(listener));
        Assert.Equal(0, listener.Health("list").Failures);
        Assert.Equal(1, server.AskedFor("/linked"));
    }

    [Fact]
    public async Task Look_SiteMovesLater_HearsWhatWasPassedOverForIt()
    {
        using var listener = Make(SampleBook.Good);
        await listener.ListenAsync();
        await WriteAsync(SampleBook.Good.Replace("latitude: 30.1, longitude: -84.2", "latitude: 45.1, longitude: -100.1"));
        listener.Gardens.Refresh();

        await NextAsync(listener);
        Assert.Equal(["far", "near", "unknown"], Known(listener));

        await NextAsync(listener);
        Assert.Equal(2, server.AskedFor("/linked"));
    }

    /// <summary>The first look is taken before the books are read again, and must not take the places for others than before.</summary>
    [Fact]
    public async Task Look_AfterARestart_FetchesNoLinkTwice()
    {
        using var listener = Make(SampleBook.Good);
        await listener.ListenAsync();

        var again = new ListFeed(Listener.Source("list"), server.At("/list"), Listener.Client(), FeedIndexReader.Read, new SeenEntries(listener.Store, "list"), new GardenPlaces(new GardenShelf(gardens.Path)));
        await again.FetchAsync(TestContext.Current.CancellationToken);

        Assert.Equal(1, server.AskedFor("/linked"));
    }

    /// <summary>A book that is spoilt may leave nobody, and nothing is lost by it.</summary>
    [Fact]
    public async Task Look_NoGardenInForce_KeepsAll()
    {
        using var listener = Make("garden: [");

        await listener.ListenAsync();

        Assert.Equal(["far", "linked", "near", "unknown"], Known(listener));
    }

    private static IEnumerable<string> Known(Listener listener) =>
        listener.Inbox.Ledger.All.Select(heard => Assert.IsType<StormClock.Core.Advisories.AlertMessage>(heard.Advisory).Identifier).Order(StringComparer.Ordinal);

    private static async Task NextAsync(Listener listener)
    {
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();
    }

    private Listener Make(string book)
    {
        WriteAsync(book).GetAwaiter().GetResult();
        var shelf = new GardenShelf(gardens.Path);
        return new(listener => [new ListFeed(Listener.Source("list"), server.At("/list"), Listener.Client(), FeedIndexReader.Read, new SeenEntries(listener.Store, "list"), new GardenPlaces(shelf))], shelf);
    }

    private Task WriteAsync(string book) => File.WriteAllTextAsync(gardens.File("quay.yaml"), book);

    private static string Alert(string identifier, string area) => $"""
        <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2"><identifier>{identifier}</identifier><sender>wind@example.org</sender>
        <sent>2027-09-21T15:00:00-04:00</sent><status>Actual</status><msgType>Alert</msgType>
        <info><event>Gale Warning</event>{area}</info></alert>
        """;
}
