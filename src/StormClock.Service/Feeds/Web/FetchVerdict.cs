using System.Net;

namespace StormClock.Service.Feeds.Web;

/// <summary>What an answer with a status means for us.</summary>
internal static class FetchVerdict
{
    /// <param name="body">Null when it is larger than allowed.</param>
    public static Fetched Of(HttpResponseMessage answer, ReadOnlyMemory<byte>? body, Validators? known, Instant now, int mostBytes, Duration longestAsked)
    {
        var status = (int)answer.StatusCode;
        return answer.StatusCode switch
        {
            HttpStatusCode.OK or HttpStatusCode.NonAuthoritativeInformation => Whole(answer, body, mostBytes),
            HttpStatusCode.NotModified when known is { Any: true } => new(FetchState.Unchanged),
            HttpStatusCode.NotFound or HttpStatusCode.Gone => new(FetchState.Gone) { Trouble = $"there is nothing at this address (status {status})" },
            HttpStatusCode.TooManyRequests => Busy(answer, "it has been asked too often (status 429)", now, longestAsked),
            HttpStatusCode.RequestTimeout => Fetched.Fails("it did not answer in time (status 408)", passing: true),
            >= HttpStatusCode.InternalServerError => Busy(answer, $"its server is in trouble (status {status})", now, longestAsked) with { IsHostFault = true },
            _ => Fetched.Fails($"it answers with status {status}"),
        };
    }

    private static Fetched Whole(HttpResponseMessage answer, ReadOnlyMemory<byte>? body, int mostBytes)
    {
        if (body is not { } bytes) return Fetched.Fails($"the answer is larger than {mostBytes} bytes and was not read");
        if (bytes.IsEmpty) return Fetched.Fails("the answer is empty");
        return new(FetchState.Good) { Body = bytes, Validators = FeedRequest.ValidatorsOf(answer) };
    }

    private static Fetched Busy(HttpResponseMessage answer, string trouble, Instant now, Duration longestAsked)
    {
        var asked = answer.Headers.RetryAfter switch
        {
            { Delta: { } pause } => now + Duration.FromTimeSpan(pause),
            { Date: { } date } => Instant.FromDateTimeOffset(date),
            _ => (Instant?)null,
        };
        return Fetched.Fails(trouble, passing: true) with { NotBefore = asked is { } until ? Instant.Min(until, now + longestAsked) : null };
    }
}
