using System.Net;
using Microsoft.AspNetCore.Authentication;
using StormClock.Service.Web;

namespace StormClock.Service.Visits;

/// <summary>Says who asks for a page.</summary>
/// <param name="find">The visit of that id, as long as it holds.</param>
public sealed class Doorkeeper(PagesSettings settings, PasscodeFile passcode, Func<string, Instant, Visitor?> find, IClock clock)
{
    /// <summary>Name of the authentication scheme and of the claim that holds a visit's id.</summary>
    public const string Scheme = "visit";

    /// <summary>Whoever comes through a proxy is not at the box, also where the proxy is.</summary>
    private static readonly string[] Forwarding = ["X-Forwarded-For", "Forwarded", "X-Real-IP", "Via"];

    /// <summary>For the whole of one request.</summary>
    public async Task NoteAsync(HttpContext context, RequestDelegate next)
    {
        Note(context, await WhoAsync(context));
        await next(context);
    }

    /// <summary>For the rest of this request.</summary>
    public static void Note(HttpContext context, Visitor visitor) => context.Features.Set(visitor);

    public static Visitor Of(HttpContext context) => context.Features.Get<Visitor>() ?? Visitor.Stranger;

    private async Task<Visitor> WhoAsync(HttpContext context)
    {
        var signedIn = await context.AuthenticateAsync(Scheme);
        if (signedIn.Principal?.FindFirst(Scheme) is { } visit && find(visit.Value, clock.GetCurrentInstant()) is { } known)
        {
            context.User = signedIn.Principal;
            return known;
        }

        return settings.IsBoxOnly && !passcode.IsSet && IsThisBox(context) ? new(VisitorKind.AtTheBox) : Visitor.Stranger;
    }

    /// <summary>A page elsewhere could give its own name this box's address; that name then stands in the request.</summary>
    private static bool IsThisBox(HttpContext context)
    {
        var host = context.Request.Host.Host;
        return context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)
            && !Forwarding.Any(context.Request.Headers.ContainsKey)
            && (host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var named) && IPAddress.IsLoopback(named)));
    }
}
