using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;

namespace StormClock.Service.Web.Api;

/// <summary>Why a program's request was not done, and the mend (RFC 9457). English alone: they are read by whoever writes the program.</summary>
internal static class ApiProblem
{
    private const int LongestQuote = 100;

    /// <summary>Also for a garden that is there and not for this caller: whoever tries addresses learns nothing.</summary>
    public static ProblemHttpResult NotThere { get; } =
        Of(StatusCodes.Status404NotFound, "There is nothing at this address, or it is not for whoever asks. GET /api/v1/gardens lists the gardens that are.");

    public static ProblemHttpResult NoKey { get; } =
        Of(StatusCodes.Status401Unauthorized, "Send a key: Authorization: Bearer KEY. Keys are made on the page /in by whoever is signed in.");

    public static ProblemHttpResult KeyOnly { get; } =
        Of(StatusCodes.Status401Unauthorized, "What changes anything needs a key, whoever is signed in: Authorization: Bearer KEY. Keys are made on the page /in.");

    public static ProblemHttpResult WrongKey { get; } =
        Of(StatusCodes.Status401Unauthorized, "This key is not known: it was taken back, or the passcode has changed since. Make another on the page /in.");

    public static ProblemHttpResult NotJson { get; } =
        Of(StatusCodes.Status415UnsupportedMediaType, "Send the body as JSON in UTF-8, with the header Content-Type: application/json.");

    public static ProblemHttpResult TooLarge { get; } =
        Of(StatusCodes.Status413PayloadTooLarge, $"The body is larger than {ApiBody.Largest} bytes. One answer takes less: send one at a time.");

    public static ProblemHttpResult TooMany { get; } =
        Of(StatusCodes.Status429TooManyRequests, "Too many requests from this address. Wait for as long as the header Retry-After says; a look every few minutes is plenty.");

    public static ProblemHttpResult Starting { get; } =
        Of(StatusCodes.Status503ServiceUnavailable, "The first look at the forecast after a start is still under way, so nothing is known yet. Ask again in a minute.");

    public static ProblemHttpResult NotKept { get; } =
        Of(StatusCodes.Status503ServiceUnavailable, "The disk of the box did not take or give the data, so it may not be kept. Send it again; saying it twice does no harm. If this stays, tell the keeper.");

    public static ProblemHttpResult OurFault { get; } =
        Of(StatusCodes.Status500InternalServerError, "The box failed at this; it is no fault of the request. Nothing was changed unless the next look shows it; saying it twice does no harm. If this stays, tell the keeper, whose log says more.");

    public static ProblemHttpResult Of(int status, string detail) => TypedResults.Problem(detail, statusCode: status);

    /// <summary>Where a body is not what the address takes.</summary>
    /// <param name="trouble">Names the place in the body, where one is known.</param>
    /// <param name="wanted">What it takes, to end the sentence.</param>
    public static ProblemHttpResult Unread(JsonException? trouble, string wanted)
    {
        var path = trouble?.Path is { Length: > 1 } known ? $" at {(known.Length > LongestQuote ? known[..LongestQuote] : known)}" : "";
        return Of(StatusCodes.Status400BadRequest, $"The body is not what this address takes{path}. Send {wanted}, and nothing else.");
    }

    /// <summary>For an answer that was refused before any of our code was asked; null for one that needs no more words.</summary>
    public static ProblemHttpResult? For(HttpResponse response) => response.StatusCode switch
    {
        StatusCodes.Status404NotFound => NotThere,
        StatusCodes.Status405MethodNotAllowed => Of(response.StatusCode, $"This address takes {response.Headers.Allow} only."),
        StatusCodes.Status413PayloadTooLarge => TooLarge,
        StatusCodes.Status415UnsupportedMediaType => NotJson,
        >= 400 => Of(response.StatusCode, "The request could not be read. /api/v1/openapi.json says what each address takes."),
        _ => null,
    };
}
