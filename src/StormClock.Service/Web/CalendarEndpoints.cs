using System.Text;
using Microsoft.Net.Http.Headers;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Store;

namespace StormClock.Service.Web;

/// <summary>
/// A person's calendar, for calendar programs that fetch it again and again. Only shows; every address that is not exactly
/// one of ours gets the same bare answer.
/// </summary>
internal static class CalendarEndpoints
{
    public static async Task<IResult> ShowAsync(string token, HttpResponse response, IJobBook book, AckKeyRing keys, IClock clock)
    {
        var link = AckToken.Read(token, keys.Keys, clock.GetCurrentInstant()).Token;
        if (link is not { Purpose: AckPurpose.Calendar } || await book.CalendarAsync(link) is not { } calendar) return TypedResults.NotFound();

        // Kept by its reader alone, and never shown without asking whether it still holds.
        response.Headers.CacheControl = "private, no-cache";
        return TypedResults.Bytes(
            Encoding.UTF8.GetBytes(calendar), "text/calendar; charset=utf-8", entityTag: new EntityTagHeaderValue($"\"{Fingerprint.Of(calendar)}\""));
    }
}
