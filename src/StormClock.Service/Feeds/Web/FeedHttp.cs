using System.Net;

namespace StormClock.Service.Feeds.Web;

/// <summary>Makes the one client through which every feed is fetched.</summary>
public static class FeedHttp
{
    /// <summary>What can be read, most wanted first; offices that have several forms choose by it.</summary>
    private const string Readable =
        "application/cap+xml, application/atom+xml;q=0.9, application/rss+xml;q=0.8, application/xml;q=0.7, text/xml;q=0.7, text/plain;q=0.6, application/geo+json;q=0.5, application/json;q=0.5, */*;q=0.1";

    /// <summary>Certificates are checked as the system does; redirects are followed by our own rules only, and cookies not kept.</summary>
    public static HttpClient Make()
    {
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            AutomaticDecompression = DecompressionMethods.None,
            ConnectTimeout = TimeSpan.FromSeconds(10),
            MaxResponseHeadersLength = 64,
            PooledConnectionLifetime = TimeSpan.FromMinutes(15),
            UseCookies = false,
        };
        var client = new HttpClient(handler) { Timeout = Timeout.InfiniteTimeSpan };
        client.DefaultRequestHeaders.Accept.ParseAdd(Readable);
        client.DefaultRequestHeaders.AcceptEncoding.ParseAdd(BoundedBody.Packings);
        return client;
    }
}
