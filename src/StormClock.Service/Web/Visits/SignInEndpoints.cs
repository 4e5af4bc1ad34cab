using System.Security.Claims;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views;

namespace StormClock.Service.Web.Visits;

/// <summary>Coming in and going out. A link is only looked at by a GET; the pressed button uses it, because mail scanners open links.</summary>
internal static class SignInEndpoints
{
    public static IEndpointRouteBuilder MapSignIn(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        routes.MapMethods("/in", reading, Show);
        routes.MapPost("/in", AskAsync).RequireRateLimiting(StormPages.SignInLimit);
        routes.MapMethods("/in/{token}", reading, Look).RequireRateLimiting(StormPages.LinkLimit);
        routes.MapPost("/in/{token}", EnterAsync).RequireRateLimiting(StormPages.SignInLimit);
        routes.MapPost("/out", LeaveAsync);
        return routes;
    }

    private static RazorComponentResult<SignInView> Show(HttpContext context, PasscodeFile passcode, KeyDesk keys) => Page(context, passcode, keys, null);

    private static async Task<IResult> AskAsync(HttpContext context, SignInDesk desk, PasscodeFile passcode, KeyDesk keys, IClock clock, IAntiforgery antiforgery)
    {
        if (await LinkEndpoints.ReadFormAsync(context.Request) is not { } form) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        if (form["passcode"].ToString() is { Length: > 0 } given)
        {
            return await desk.EnterByPasscodeAsync(given, clock.GetCurrentInstant()) is { } visit ? await ComeInAsync(context, visit, ".") : Page(context, passcode, keys, "in.wrong-passcode");
        }

        desk.Ask(form["address"].ToString(), clock.GetCurrentInstant());
        return Page(context, passcode, keys, "in.asked");
    }

    private static IResult Look(string token, HttpContext context, SignInDesk desk, IClock clock) =>
        desk.Look(token, clock.GetCurrentInstant()) is { } email
            ? new RazorComponentResult<SignInLinkView>(new Dictionary<string, object?> { [nameof(SignInLinkView.Speech)] = BrowserSpeech.Of(context.Request), [nameof(SignInLinkView.Token)] = token, [nameof(SignInLinkView.Email)] = email })
            : Notices.SignInOver(context.Request);

    private static async Task<IResult> EnterAsync(string token, HttpContext context, SignInDesk desk, IClock clock, IAntiforgery antiforgery)
    {
        if (await LinkEndpoints.ReadFormAsync(context.Request) is null) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        return await desk.EnterAsync(token, clock.GetCurrentInstant()) is { } visit ? await ComeInAsync(context, visit, "..") : Notices.SignInOver(context.Request);
    }

    private static async Task<IResult> LeaveAsync(HttpContext context, SignInDesk desk, IAntiforgery antiforgery)
    {
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        if (context.User.FindFirst(Doorkeeper.Scheme) is { } visit) await desk.LeaveAsync(visit.Value);
        await context.SignOutAsync(Doorkeeper.Scheme);
        return See(context, ".");
    }

    private static async Task<IResult> ComeInAsync(HttpContext context, Visit visit, string front)
    {
        var principal = new ClaimsPrincipal(new ClaimsIdentity([new Claim(Doorkeeper.Scheme, visit.Id)], Doorkeeper.Scheme));
        await context.SignInAsync(Doorkeeper.Scheme, principal, new() { IsPersistent = true });
        return See(context, front);
    }

    /// <summary>Relative, so that it also holds behind a proxy that puts a folder before our addresses.</summary>
    private static StatusCodeHttpResult See(HttpContext context, string where)
    {
        context.Response.Headers.Location = where;
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    /// <param name="said">Key of what became of the last form; null for none.</param>
    /// <param name="fresh">A key for another program that was just made; null for none.</param>
    internal static RazorComponentResult<SignInView> Page(HttpContext context, PasscodeFile passcode, KeyDesk keys, string? said, string? fresh = null)
    {
        var visitor = Doorkeeper.Of(context);
        return new(new Dictionary<string, object?>
        {
            [nameof(SignInView.Speech)] = BrowserSpeech.Of(context.Request),
            [nameof(SignInView.Visitor)] = visitor,
            [nameof(SignInView.HasPasscode)] = passcode.IsSet,
            [nameof(SignInView.Said)] = said,
            [nameof(SignInView.Keys)] = KeyDesk.MayHold(visitor) ? keys.Of(visitor) : null,
            [nameof(SignInView.FreshKey)] = fresh,
        });
    }
}
