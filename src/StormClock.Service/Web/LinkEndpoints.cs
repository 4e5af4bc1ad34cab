using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Web.Views;

namespace StormClock.Service.Web;

/// <summary>
/// The page behind a link. Looking never acts, because mail scanners open links and run what they find there; only a
/// pressed button does, and pressing it again does no harm.
/// </summary>
internal static class LinkEndpoints
{
    /// <summary>Bytes of a form: one answer and the form's own token fit many times.</summary>
    public const long LargestForm = 16 * 1024;

    public static async Task<IResult> ShowAsync(string token, HttpContext context, IJobBook book, AckKeyRing keys, IClock clock)
    {
        var now = clock.GetCurrentInstant();
        var reading = Read(token, keys, now);
        if (reading.Token is not { } link) return Notices.For(reading.Verdict, context.Request);

        return await book.LookAsync(link, now) is { } page ? Page(token, link, page, now) : Notices.NoLongerKnown(context.Request);
    }

    public static async Task<IResult> AnswerAsync(
        string token, HttpContext context, IJobBook book, AckKeyRing keys, IClock clock, IAntiforgery antiforgery)
    {
        var now = clock.GetCurrentInstant();
        var reading = Read(token, keys, now);
        if (reading.Token is not { } link) return Notices.For(reading.Verdict, context.Request);
        if (await ReadFormAsync(context.Request) is not { } form) return Notices.FormUnread(context.Request);
        if (!await antiforgery.IsRequestValidAsync(context)) return Notices.FormStale(context.Request);
        if (Answer(form["answer"].ToString(), link.Purpose) is not { } answer) return Notices.FormUnread(context.Request);
        if (await book.LookAsync(link, now) is null) return Notices.NoLongerKnown(context.Request);

        await book.AnswerAsync(link, answer, now);

        // Relative, so that it also holds behind a proxy that puts a folder before our addresses.
        context.Response.Headers.Location = token;
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    /// <summary>A calendar's address, or a link for subscribing devices, is good for nothing here.</summary>
    private static AckReading Read(string token, AckKeyRing keys, Instant now) =>
        AckToken.Read(token, keys.Keys, now) is { Token: not { Purpose: AckPurpose.Calendar or AckPurpose.Push } } reading ? reading : new(AckVerdict.NotOurs, null);

    private static RazorComponentResult<LinkView> Page(
        string token, AckToken link, LinkPage page, Instant now) => new(new Dictionary<string, object?>
    {
        [nameof(LinkView.Token)] = token,
        [nameof(LinkView.Purpose)] = link.Purpose,
        [nameof(LinkView.Page)] = page,
        [nameof(LinkView.Now)] = now,
    });

    /// <summary>Null when it is no form, or larger or odder than any of ours.</summary>
    public static async Task<IFormCollection?> ReadFormAsync(HttpRequest request)
    {
        if (!request.HasFormContentType) return null;

        try
        {
            return await request.ReadFormAsync(request.HttpContext.RequestAborted);
        }
        catch (Exception odd) when (odd is BadHttpRequestException or InvalidDataException or IOException)
        {
            return null;
        }
    }

    /// <summary>Null for no word of ours.</summary>
    public static JobAnswer? Answer(string text, AckPurpose purpose) => (purpose, text) switch
    {
        (_, "done") => JobAnswer.Done,
        (AckPurpose.Indoors, _) => null,
        (_, "cannot") => JobAnswer.Cannot,
        (_, "no_time") => JobAnswer.NoTime,
        (_, "no_material") => JobAnswer.NoMaterial,
        (_, "needs_person") => JobAnswer.NeedsPerson,
        (_, "later") => JobAnswer.Later,
        (_, "take_back") => JobAnswer.TakeBack,
        _ => null,
    };
}
