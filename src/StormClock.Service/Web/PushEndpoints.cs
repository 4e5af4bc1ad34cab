using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Desk;
using StormClock.Service.Web.Views;

namespace StormClock.Service.Web;

/// <summary>
/// The page where a person's devices are subscribed to notifications and taken off again. The browser's push service can
/// only be asked by a script, so this page alone has one, from a file; taking a device off needs none.
/// </summary>
internal static class PushEndpoints
{
    /// <summary>Needs <see cref="PushDesk"/> beside what the other pages need.</summary>
    public static IEndpointRouteBuilder MapPushPages(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        var page = routes.MapGroup("/p/{token}").RequireRateLimiting(StormPages.LinkLimit);
        page.MapMethods("", reading, Show);
        page.MapPost("", ChangeAsync).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(LinkEndpoints.LargestForm));
        routes.MapMethods("/" + PushScripts.PageName, reading, PushScripts.ServePage);
        routes.MapMethods("/" + PushScripts.WorkerName, reading, PushScripts.ServeWorker);
        return routes;
    }

    private static IResult Show(string token, HttpContext context, PushDesk desk, AckKeyRing keys, IClock clock)
    {
        var now = clock.GetCurrentInstant();
        if (Read(token, context, keys, now, out var refusal) is not { } link) return refusal!;
        if (desk.Look(link) is not { } page) return Notices.NoLongerKnown(context.Request);

        PageHeaders.AllowOwnScript(context.Response);
        return new RazorComponentResult<PushView>(new Dictionary<string, object?>
        {
            [nameof(PushView.Token)] = token,
            [nameof(PushView.Page)] = page,
            [nameof(PushView.Now)] = now,
        });
    }

    private static async Task<IResult> ChangeAsync(
        string token, HttpContext context, PushDesk desk, AckKeyRing keys, IClock clock, IAntiforgery antiforgery)
    {
        var now = clock.GetCurrentInstant();
        if (Read(token, context, keys, now, out var refusal) is not { } link) return refusal!;
        if (await LinkEndpoints.ReadFormAsync(context.Request) is not { } form) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        if (desk.Look(link) is null) return Notices.NoLongerKnown(context.Request);

        if (form["device"].ToString() is { Length: > 0 } device)
        {
            await desk.RemoveAsync(link, device);
            return SeeOther(context.Response, token);
        }

        if (form["endpoint"].ToString() is not { Length: > 0 } endpoint) return Notices.PushNeedsScript(context.Request);
        return await desk.AddAsync(link, endpoint, form["p256dh"].ToString(), form["auth"].ToString(), form["name"].ToString(), now) switch
        {
            SubscribeResult.Done => SeeOther(context.Response, token),
            SubscribeResult.TooMany => Notices.PushTooMany(context.Request),
            _ => Notices.PushNotUsable(context.Request),
        };
    }

    private static AckToken? Read(string token, HttpContext context, AckKeyRing keys, Instant now, out IResult? refusal)
    {
        var reading = AckToken.Read(token, keys.Keys, now);
        var link = reading.Token is { Purpose: AckPurpose.Push } ours ? ours : null;
        refusal = link is null ? Notices.For(reading.Token is null ? reading.Verdict : AckVerdict.NotOurs, context.Request) : null;
        return link;
    }

    /// <summary>Relative, as on every page.</summary>
    private static StatusCodeHttpResult SeeOther(HttpResponse response, string token)
    {
        response.Headers.Location = token;
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }
}
