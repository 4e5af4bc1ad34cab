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

    /// <summary>Bytes that are read only to be thrown away (C): a browser that still sends does not see the answer. Larger ones are cut off.</summary>
    private const long MostThrownAway = 128 << 20;

    private readonly SemaphoreSlim slots = new(Most);

    /// <summary>Reads the form of a visitor who may be here, makes the photo in it, and hands both on.</summary>
    /// <param name="refused">Answers with the page again: why, and the status; the form where it was read.</param>
    public async Task<IResult> TakeAsync(HttpContext context, GardenVisit visit, Func<IFormCollection, Photo, Task<IResult>> keep, Func<IFormCollection?, string, int, IResult> refused)
    {
        if (!await slots.WaitAsync(0))
        {
            await ThrowAwayAsync(context);
            context.Response.Headers.RetryAfter = "10";
            return Notices.UploadsBusy(context.Request);
        }

        try
        {
            if (context.Request.ContentLength > LargestForm)
            {
                await ThrowAwayAsync(context);
                return refused(null, visit.Speech.For(PhotoRefusal.TooLarge).Reason, StatusCodes.Status413PayloadTooLarge);
            }

            var (form, unread) = await door.ReadAsync(context);
            if (form is null) return unread!;
            var made = await PhotoMaker.MakeAsync(form.Files[Field]?.OpenReadStream() ?? Stream.Null, visit.Speech, context.RequestAborted);
            return made.Value is { } photo ? await keep(form, photo) : refused(form, made.Faults[0].Reason, StatusCodes.Status400BadRequest);
        }
        finally
        {
            slots.Release();
        }
    }

    public void Dispose() => slots.Dispose();

    private static async Task ThrowAwayAsync(HttpContext context)
    {
        if (context.Request.ContentLength is not { } length || length > MostThrownAway) return;
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = length;
        try
        {
            await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
        }
        catch (Exception broken) when (broken is IOException or OperationCanceledException)
        {
            // Whoever sent it is gone, or too slow; the answer finds nobody.
        }
    }
}
