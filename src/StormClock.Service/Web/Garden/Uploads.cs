using Microsoft.AspNetCore.Http.Features;
using StormClock.Service.Photos;

namespace StormClock.Service.Web.Garden;

/// <summary>Takes photos out of forms, few at a time: each may fill some memory and keep a core busy.</summary>
internal sealed class Uploads(GardenDoor door) : IDisposable
{
    /// <summary>Name of the field.</summary>
    public const string Field = "photo";

    /// <summary>At a time in the process (C).</summary>
    public const int Most = 2;

    /// <summary>Bytes of a form with a photo as large as may be: its other fields and the marks between them are small.</summary>
    public const long LargestForm = PhotoLimits.UploadBytes + (64 << 10);

    /// <summary>Bytes that are read only to be thrown away (C): a browser that still sends does not see the answer. What is longer is cut off.</summary>
    private const long MostThrownAway = 128 << 20;

    private readonly SemaphoreSlim slots = new(Most);

    /// <summary>Reads the form of a visitor who may be here, makes the photo in it, and hands both on.</summary>
    /// <param name="refused">Answers with the page again: why, and the status; the form where it was read.</param>
    public async Task<IResult> TakeAsync(HttpContext context, GardenVisit visit, Func<IFormCollection, Photo, Task<IResult>> keep, Func<IFormCollection?, string, int, IResult> refused)
    {
        if (context.Request.ContentLength > LargestForm) return await RefuseAsync(context, refused(null, visit.Speech.For(PhotoRefusal.TooLarge).Reason, StatusCodes.Status413PayloadTooLarge));
        if (!await slots.WaitAsync(0))
        {
            context.Response.Headers.RetryAfter = "10";
            return await RefuseAsync(context, Notices.UploadsBusy(context.Request));
        }

        IResult answer;
        try
        {
            answer = await AnswerAsync(context, visit, keep, refused);
        }
        finally
        {
            slots.Release();
        }

        return await RefuseAsync(context, answer);
    }

    /// <summary>Answers once the rest of what is being sent has come, and is thrown away.</summary>
    public static async Task<IResult> RefuseAsync(HttpContext context, IResult answer)
    {
        await ThrowAwayAsync(context);
        return answer;
    }

    public void Dispose() => slots.Dispose();

    private async Task<IResult> AnswerAsync(HttpContext context, GardenVisit visit, Func<IFormCollection, Photo, Task<IResult>> keep, Func<IFormCollection?, string, int, IResult> refused)
    {
        if (!context.Request.HasFormContentType || context.Request.ContentLength == 0) return refused(null, visit.Speech.For(PhotoRefusal.Empty).Reason, StatusCodes.Status400BadRequest);

        var (form, isOver) = await ReadAsync(context);
        if (form is null) return isOver ? No(PhotoRefusal.TooLarge, StatusCodes.Status413PayloadTooLarge) : No(PhotoRefusal.Broken);
        if (!await door.IsOursAsync(context)) return Notices.FormStale(context.Request);
        if (form.Files.GetFiles(Field).Count > 1) return No(PhotoRefusal.Several);

        var made = await PhotoMaker.MakeAsync(form.Files[Field]?.OpenReadStream() ?? Stream.Null, visit.Speech, context.RequestAborted);
        return made.Value is { } photo ? await keep(form, photo) : refused(form, made.Faults[0].Reason, StatusCodes.Status400BadRequest);

        IResult No(PhotoRefusal why, int status = StatusCodes.Status400BadRequest) => refused(form, visit.Speech.For(why).Reason, status);
    }

    /// <returns>The form; null where it cannot be read, and whether that is because it is too large.</returns>
    private static async Task<(IFormCollection? Form, bool IsOver)> ReadAsync(HttpContext context)
    {
        MayRead(context, MostThrownAway);
        var whole = context.Request.Body;
        var bounded = new BoundedBody(whole, LargestForm);
        context.Request.Body = bounded;
        var form = await LinkEndpoints.ReadFormAsync(context.Request);
        context.Request.Body = whole;
        return (form, bounded.IsOver);
    }

    private static async Task ThrowAwayAsync(HttpContext context)
    {
        MayRead(context, Math.Max(context.Request.ContentLength ?? 0, MostThrownAway));

        // Of so much more the answer goes out at once. The server reads on for some seconds, in which it can be seen.
        if (context.Request.ContentLength > MostThrownAway) return;
        try
        {
            await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
        }
        catch (Exception broken) when (broken is IOException or OperationCanceledException)
        {
            // Whoever sent it is gone, or too slow, or sends without end; the answer may still find somebody.
        }
    }

    /// <summary>Moves the server's bound, beyond which it ends the connection, as long as nothing was read.</summary>
    private static void MayRead(HttpContext context, long bytes)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = bytes;
    }
}
