using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using StormClock.Service.Store;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Api;

/// <summary>
/// Before every address of the API: who asks, by key; and after it: words for whatever was refused without any. A browser's visit, or
/// sitting at the box, opens what only reads: a page elsewhere could make a browser send a form here, but not a key.
/// </summary>
internal sealed class ApiGate(KeyDesk keys, IClock clock, ILogger<ApiGate> log)
{
    private const string Bearer = "Bearer ";

    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        if (await RefuseAsync(context) is { } refusal)
        {
            await refusal.ExecuteAsync(context);
            return;
        }

        try
        {
            await next(context);
        }
        catch (StoreUnavailableException trouble) when (!context.Response.HasStarted)
        {
            log.LogError(trouble, "A request of another program was not done");
            await ApiProblem.NotKept.ExecuteAsync(context);
            return;
        }

        var response = context.Response;
        if (!response.HasStarted && response.ContentType is null && response.ContentLength is null && ApiProblem.For(response) is { } problem) await problem.ExecuteAsync(context);
    }

    /// <summary>Null for whoever may go on; the visitor of the request is then known.</summary>
    private async Task<ProblemHttpResult?> RefuseAsync(HttpContext context)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<IAllowAnonymous>() is not null) return null;
        var refusal = await WhoAsync(context);
        if (refusal is not null) context.Response.Headers.WWWAuthenticate = refusal == ApiProblem.WrongKey ? "Bearer realm=\"stormclock\", error=\"invalid_token\"" : "Bearer realm=\"stormclock\"";
        return refusal;
    }

    private async Task<ProblemHttpResult?> WhoAsync(HttpContext context)
    {
        var sent = context.Request.Headers[HeaderNames.Authorization];
        if (sent.Count == 0)
        {
            if (!HttpMethods.IsGet(context.Request.Method)) return ApiProblem.KeyOnly;
            return Doorkeeper.Of(context).Kind == VisitorKind.Stranger ? ApiProblem.NoKey : null;
        }

        if (sent is not [{ } header] || !header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)) return ApiProblem.NoKey;
        if (await keys.VisitorAsync(header[Bearer.Length..].Trim(), clock.GetCurrentInstant()) is not { } visitor) return ApiProblem.WrongKey;
        Doorkeeper.Note(context, visitor);
        return null;
    }
}
