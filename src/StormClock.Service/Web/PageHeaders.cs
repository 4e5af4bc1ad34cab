namespace StormClock.Service.Web;

/// <summary>Headers on every answer: nothing from elsewhere, no scripts, no framing, and links that do not leak onward.</summary>
internal static class PageHeaders
{
    private const string NoScript = "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static Task AddAsync(HttpContext context, RequestDelegate next)
    {
        Set(context.Response);
        return next(context);
    }

    public static void Set(HttpResponse response)
    {
        var headers = response.Headers;
        headers.ContentSecurityPolicy = NoScript;
        headers["Referrer-Policy"] = "no-referrer";
        headers["X-Robots-Tag"] = "noindex, nofollow";
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers.CacheControl = "no-store";
    }

    /// <summary>For pages with photos, beside what they may otherwise: pictures from our own addresses.</summary>
    public static void AllowOwnPictures(HttpResponse response) =>
        response.Headers.ContentSecurityPolicy = $"{response.Headers.ContentSecurityPolicy}; img-src 'self'";

    /// <summary>For the one page that cannot do without: scripts and a worker from our own files, still none in the page.</summary>
    public static void AllowOwnScript(HttpResponse response) =>
        response.Headers.ContentSecurityPolicy = $"{NoScript}; script-src 'self'; worker-src 'self'";

    /// <summary>For the walk, whose script sends forms again that could not be sent.</summary>
    public static void AllowOwnScriptThatSends(HttpResponse response) =>
        response.Headers.ContentSecurityPolicy = $"{NoScript}; script-src 'self'; connect-src 'self'";
}
