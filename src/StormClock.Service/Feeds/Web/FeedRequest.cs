using System.Net.Http.Headers;
using System.Reflection;

namespace StormClock.Service.Feeds.Web;

/// <summary>The requests of feeds and what their answers' headers say.</summary>
internal static class FeedRequest
{
    private static readonly string Version = typeof(FeedRequest).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";

    public static HttpRequestMessage Make(FeedSource source, Uri at, Validators? known)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, at);
        request.Headers.UserAgent.Add(new(new ProductHeaderValue("StormClock", Version)));
        if (source.Contact is { } contact) request.Headers.UserAgent.Add(new($"({contact})"));
        if (known?.ETag is { } tag) request.Headers.TryAddWithoutValidation("If-None-Match", tag);
        if (known?.LastModified is { } modified) request.Headers.TryAddWithoutValidation("If-Modified-Since", modified);
        return request;
    }

    /// <summary>Where the answer sends us; null when it is no redirect or names no place.</summary>
    public static Uri? RedirectOf(HttpResponseMessage answer, Uri at) =>
        (int)answer.StatusCode is 301 or 302 or 303 or 307 or 308 && answer.Headers.Location is { } location && Uri.TryCreate(at, location, out var to) ? to : null;

    /// <summary>As the server gave them, to be given back unchanged.</summary>
    public static Validators ValidatorsOf(HttpResponseMessage answer) => new(First(answer.Headers, "ETag"), First(answer.Content.Headers, "Last-Modified"));

    public static IReadOnlyDictionary<string, string> HeadersOf(HttpResponseMessage answer) =>
        answer.Headers.NonValidated.Concat(answer.Content.Headers.NonValidated)
            .GroupBy(header => header.Key, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(header => header.Key, header => string.Join(", ", header.Select(given => given.Value.ToString())));

    private static string? First(HttpHeaders headers, string name) => headers.NonValidated.TryGetValues(name, out var values) ? values.First() : null;
}
