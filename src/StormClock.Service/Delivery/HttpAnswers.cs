using System.Net;
using System.Net.Http.Headers;
using StormClock.Service.Messages;

namespace StormClock.Service.Delivery;

/// <summary>What a web server's answer to a posted message means for it. Bodies of answers are never read.</summary>
internal static class HttpAnswers
{
    private const int LongestDetail = 300;

    /// <summary>Hands a message over once.</summary>
    /// <returns>What became of it, and the status; null when no answer came.</returns>
    public static async Task<(DeliveryOutcome Outcome, HttpStatusCode? Status)> PostAsync(
        HttpClient client, HttpRequestMessage request, IClock clock, CancellationToken cancellation)
    {
        try
        {
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
            return (Of(answer.StatusCode, answer.Headers.RetryAfter, clock.GetCurrentInstant()), answer.StatusCode);
        }
        catch (HttpRequestException fault)
        {
            return (new(NeverConnected(fault) ? DeliveryResult.TryAgain : DeliveryResult.Unknown, Plain.Cut(fault.Message, LongestDetail)), null);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return (new(DeliveryResult.Unknown, "the server took too long"), null);
        }
    }

    /// <summary>2xx is taken; 408, 429 and 5xx may be taken later; everything else, redirects too, never will be.</summary>
    public static DeliveryOutcome Of(HttpStatusCode status, RetryConditionHeaderValue? retryAfter, Instant now)
    {
        var detail = $"{(int)status} {status}";
        return (int)status switch
        {
            >= 200 and < 300 => new(DeliveryResult.Delivered, detail),
            408 or 429 or >= 500 => new(DeliveryResult.TryAgain, detail, Wait(retryAfter, now)),
            _ => new(DeliveryResult.Refused, detail),
        };
    }

    private static Duration? Wait(RetryConditionHeaderValue? asked, Instant now) => asked switch
    {
        { Delta: { } seconds } => Duration.FromTimeSpan(seconds),
        { Date: { } date } => Instant.FromDateTimeOffset(date) - now,
        _ => null,
    };

    private static bool NeverConnected(HttpRequestException fault) => fault.HttpRequestError
        is HttpRequestError.NameResolutionError or HttpRequestError.ConnectionError or HttpRequestError.SecureConnectionError;
}
