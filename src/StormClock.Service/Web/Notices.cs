using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Web.Views;

namespace StormClock.Service.Web;

/// <summary>Plain pages for links and forms that do not work, each with the status that fits and what to do.</summary>
internal static class Notices
{
    public static IResult NoLongerKnown => Page(
        StatusCodes.Status404NotFound, "No longer kept", "The list behind this link is no longer kept. Use the newest message you have.");

    public static IResult FormUnread => Page(
        StatusCodes.Status400BadRequest, "Not understood", "The answer could not be read. Open the link again and press one of its buttons.");

    public static IResult FormStale => Page(
        StatusCodes.Status400BadRequest,
        "Nothing was changed",
        "The page was too old, or this browser keeps no cookies. Open the link again and press the button once more.");

    public static IResult TestNotHere => Page(
        StatusCodes.Status403Forbidden, "Not from here", "Test messages are sent from this page only on the box itself, and only where no address for phones is set. The command send-test does it anywhere.");

    public static IResult Tested(TestSent sent) => sent.Delivered
        ? Page(StatusCodes.Status200OK, "Test message sent", $"Handed over for {sent.Address}{Said(sent)}. Now see whether it arrives.")
        : Page(StatusCodes.Status502BadGateway, "Test message not sent", $"Not sent to {sent.Address}{Said(sent)}.");

    private static string Said(TestSent sent) => sent.Detail is { Length: > 0 } detail ? $": {detail.TrimEnd('.')}" : "";

    public static IResult PushNeedsScript => Page(
        StatusCodes.Status400BadRequest,
        "Nothing was changed",
        "Notifications can only be turned on where the browser runs this page's script. Switch script on for this page and press again, or stay with mail: it brings everything.");

    public static IResult PushNotUsable => Page(
        StatusCodes.Status400BadRequest,
        "Nothing was changed",
        "This browser named no push service that can be used: it must be reached by https under a public name. Another browser may do; mail brings everything.");

    public static IResult PushTooMany => Page(
        StatusCodes.Status409Conflict, "Nothing was changed", $"There are {Desk.PushDesk.MostDevices} devices already. Take one off first.");

    public static IResult For(AckVerdict verdict) => verdict == AckVerdict.Expired
        ? Page(StatusCodes.Status410Gone, "Link expired", "This link has run out. Use the newest message you have.")
        : Page(
            StatusCodes.Status404NotFound,
            "Not one of our links",
            "This link was not made here, or part of it is missing. Copy the whole of it from the message.");

    private static RazorComponentResult<NoticeView> Page(int status, string title, string text) =>
        new(new Dictionary<string, object?> { [nameof(NoticeView.Title)] = title, [nameof(NoticeView.Text)] = text }) { StatusCode = status };
}
