using Microsoft.AspNetCore.Antiforgery;
using StormClock.Service.Visits;

namespace StormClock.Service.Web;

/// <summary>
/// A test message from the front page. Only where nobody but this box can open that page: served on the box's own address, with no
/// address for phones (behind which a proxy could bring strangers), and asked by whoever sits at the open box; once it has a passcode, the keeper's page sends them.
/// </summary>
internal static class TestEndpoints
{
    public const string Path = "test";

    public static async Task<IResult> SendAsync(HttpContext context, IJobBook book, PagesSettings settings, IClock clock, IAntiforgery antiforgery)
    {
        if (!settings.MaySendTests || Doorkeeper.Of(context).Kind != VisitorKind.AtTheBox) return Notices.TestNotHere(context.Request);
        if (await LinkEndpoints.ReadFormAsync(context.Request) is not { } form) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        return form["to"].ToString().Split('/') is [var garden, var person] && await book.SendTestAsync(garden, person, clock.GetCurrentInstant()) is { } sent
            ? Notices.Tested(context.Request, sent)
            : Notices.FormUnread(context.Request);
    }
}
