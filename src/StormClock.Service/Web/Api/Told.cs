using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;
using StormClock.Service.Commands;

namespace StormClock.Service.Web.Api;

/// <summary>An answer in the JSON of the commands. The framework's own would take its settings from the host, which would then carry them from its start.</summary>
internal sealed class Told<TValue>(TValue value) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) => httpContext.Response.WriteAsJsonAsync(value, Told.Options, httpContext.RequestAborted);

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(TValue), [ApiBody.MediaType]));
}

/// <summary>Makes answers.</summary>
internal static class Told
{
    public static JsonSerializerOptions Options { get; } = new(Json.Options) { WriteIndented = false };

    public static Told<TValue> Of<TValue>(TValue value) => new(value);
}
