using Microsoft.AspNetCore.Antiforgery;
using StormClock.Service.Desk;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Keeper;

/// <summary>Lets the keeper into the keeper's pages, and nobody else.</summary>
internal sealed class KeeperDoor(GardenShelf shelf, IAntiforgery antiforgery)
{
    public bool IsOpenTo(HttpContext context) => Doorkeeper.Of(context).IsKeeper(shelf.Books);

    /// <summary>Null for whoever may go on.</summary>
    public IResult? Refuse(HttpContext context)
    {
        if (IsOpenTo(context)) return null;
        if (Doorkeeper.Of(context).Kind != VisitorKind.Stranger || !HttpMethods.IsGet(context.Request.Method)) return Notices.NotForYou(context.Request);
        context.Response.Headers.Location = $"{Ways.Up(context.Request)}in";
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    /// <summary>Null when it is no form, or none that came from a page of ours.</summary>
    public async Task<IFormCollection?> FormAsync(HttpContext context) =>
        await LinkEndpoints.ReadFormAsync(context.Request) is { } form && await antiforgery.IsRequestValidAsync(context) ? form : null;
}
