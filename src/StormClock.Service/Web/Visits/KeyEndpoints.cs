using Microsoft.AspNetCore.Antiforgery;
using StormClock.Service.Visits;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Visits;

/// <summary>Makes keys for other programs, and takes them back: a part of the page <c>/in</c>.</summary>
internal static class KeyEndpoints
{
    public static IEndpointRouteBuilder MapKeys(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keys", PressAsync);
        return routes;
    }

    private static async Task<IResult> PressAsync(HttpContext context, KeyDesk keys, PasscodeFile passcode, IClock clock, IAntiforgery antiforgery)
    {
        var visitor = Doorkeeper.Of(context);
        if (!KeyDesk.MayHold(visitor)) return Notices.NotForYou(context.Request);
        if (await LinkEndpoints.ReadFormAsync(context.Request) is not { } form) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        if (form["take_back"].ToString() is { Length: > 0 } id)
        {
            await keys.TakeBackAsync(visitor, id);
            return GardenDoor.See(context, "in");
        }

        var name = form["name"].ToString().Trim();
        if (name.Length is 0 or > KeyDesk.LongestName || name.Any(char.IsControl)) return Notices.FormUnread(context.Request);

        // Shown in the answer itself: the key is kept nowhere from which a page could show it later.
        var fresh = await keys.MakeAsync(visitor, name, clock.GetCurrentInstant());
        return SignInEndpoints.Page(context, passcode, keys, fresh is null ? "in.keys.full" : null, fresh);
    }
}
