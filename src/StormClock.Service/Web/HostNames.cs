using System.Net;

namespace StormClock.Service.Web;

/// <summary>
/// Answers under the names that are this box's own only. A page elsewhere can make its own name point here, and would then be trusted by
/// the browser with what stands here; it cannot do so with a bare address or with our name.
/// </summary>
internal sealed class HostNames(PagesSettings settings)
{
    private readonly HashSet<string> own = new(
        ["localhost", Environment.MachineName, $"{Environment.MachineName}.local", .. settings.PagesAddress is { } address ? [address.Host] : Array.Empty<string>()],
        StringComparer.OrdinalIgnoreCase);

    public async Task CheckAsync(HttpContext context, RequestDelegate next)
    {
        var host = context.Request.Host.Host;
        if (own.Contains(host) || IPAddress.TryParse(host.Trim('[', ']'), out _))
        {
            await next(context);
            return;
        }

        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        await context.Response.WriteAsync($"{BrowserSpeech.Of(context.Request).Say("notice.other-name")}\n", context.RequestAborted);
    }
}
