using Microsoft.AspNetCore.Http.HttpResults;

namespace StormClock.Service.Web;

/// <summary>What a browser shows beside a page's name: a leaf that is a clock's hand. Browsers ask for it at this address unasked.</summary>
internal static class Icon
{
    public const string Name = "favicon.ico";

    private const string Svg =
        """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><circle cx="16" cy="16" r="14" fill="#fff" stroke="#0b4a31" stroke-width="3"/><path d="M16 17C10 12 12 6 16 4c4 2 6 8 0 13z" fill="#0b4a31"/><path d="M16 16l8 5" stroke="#16231d" stroke-width="3" stroke-linecap="round"/></svg>
        """;

    public static ContentHttpResult Serve(HttpResponse response)
    {
        response.Headers.CacheControl = "max-age=604800";
        return TypedResults.Text(Svg, "image/svg+xml; charset=utf-8");
    }
}
