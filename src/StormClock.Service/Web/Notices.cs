using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Web.Views;

namespace StormClock.Service.Web;

/// <summary>Plain pages for links and forms that do not work, each with the status that fits and what to do.</summary>
internal static class Notices
{
    public static IResult NoLongerKnown(HttpRequest request) => Page(request, StatusCodes.Status404NotFound, "notice.gone");

    /// <summary>Also for a garden that is there and not for this visitor: whoever tries addresses learns nothing.</summary>
    public static IResult NotForYou(HttpRequest request) => Page(request, StatusCodes.Status404NotFound, "notice.not-for-you");

    public static IResult NoPlan(HttpRequest request) => Page(request, StatusCodes.Status404NotFound, "notice.no-plan");

    public static IResult SignInOver(HttpRequest request) => Page(request, StatusCodes.Status410Gone, "notice.sign-in-over");

    public static IResult FormUnread(HttpRequest request) => Page(request, StatusCodes.Status400BadRequest, "notice.unread");

    public static IResult FormStale(HttpRequest request) => Page(request, StatusCodes.Status400BadRequest, "notice.stale");

    public static IResult TestNotHere(HttpRequest request) => Page(request, StatusCodes.Status403Forbidden, "notice.test-not-here");

    public static IResult Tested(HttpRequest request, TestSent sent) => sent.Delivered
        ? Page(request, StatusCodes.Status200OK, "notice.tested", ("address", sent.Address), ("detail", Said(sent)))
        : Page(request, StatusCodes.Status502BadGateway, "notice.not-tested", ("address", sent.Address), ("detail", Said(sent)));

    private static string Said(TestSent sent) => sent.Detail is { Length: > 0 } detail ? $": {detail.TrimEnd('.')}" : "";

    public static IResult PushNeedsScript(HttpRequest request) => Page(request, StatusCodes.Status400BadRequest, "notice.push-script");

    public static IResult PushNotUsable(HttpRequest request) => Page(request, StatusCodes.Status400BadRequest, "notice.push-unusable");

    public static IResult PushTooMany(HttpRequest request) => Page(request, StatusCodes.Status409Conflict, "notice.push-too-many", ("count", Desk.PushDesk.MostDevices));

    public static IResult UploadsBusy(HttpRequest request) => Page(request, StatusCodes.Status429TooManyRequests, "notice.uploads-busy");

    public static IResult OurFault(HttpRequest request) => new RazorComponentResult<FaultView>(new Dictionary<string, object?>
    {
        [nameof(FaultView.Speech)] = BrowserSpeech.Of(request),
        [nameof(FaultView.Up)] = Ways.Up(request),
    }) { StatusCode = StatusCodes.Status500InternalServerError };

    public static IResult For(AckVerdict verdict, HttpRequest request) => verdict == AckVerdict.Expired
        ? Page(request, StatusCodes.Status410Gone, "notice.expired")
        : Page(request, StatusCodes.Status404NotFound, "notice.not-ours");

    /// <summary>Whose page it would be is not known here, so the browser says which language is read.</summary>
    private static RazorComponentResult<NoticeView> Page(HttpRequest request, int status, string key, params ReadOnlySpan<(string, object)> values)
    {
        var speech = BrowserSpeech.Of(request);
        return new(new Dictionary<string, object?>
        {
            [nameof(NoticeView.Speech)] = speech,
            [nameof(NoticeView.Up)] = Ways.Up(request),
            [nameof(NoticeView.Title)] = speech.Say($"{key}.title"),
            [nameof(NoticeView.Text)] = speech.Say(key, values),
        }) { StatusCode = status };
    }
}
