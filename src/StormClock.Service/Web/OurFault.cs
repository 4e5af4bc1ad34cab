using StormClock.Service.Web.Api;

namespace StormClock.Service.Web;

/// <summary>
/// Around every answer: what went wrong in here is told in plain words, and nothing of it but to the log. What the other side did, such as going away or
/// sending too much, is left to the server.
/// </summary>
internal sealed class OurFault(ILogger<OurFault> log)
{
    public async Task CatchAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (Exception trouble) when (IsOurs(trouble, context) && !context.Response.HasStarted)
        {
            // The address may be a secret, as that of a link is; the pattern it fits is none.
            log.LogError(trouble, "{Method} {Address} failed", context.Request.Method, (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "(no address of ours)");
            context.Response.Clear();
            PageHeaders.Set(context.Response);
            if (ApiPages.IsApi(context.Request)) await ApiProblem.OurFault.ExecuteAsync(context);
            else await Notices.OurFault(context.Request).ExecuteAsync(context);
        }
    }

    private static bool IsOurs(Exception trouble, HttpContext context) =>
        trouble is not BadHttpRequestException && !context.RequestAborted.IsCancellationRequested;
}
