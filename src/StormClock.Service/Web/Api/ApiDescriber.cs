using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using StormClock.Service.Commands;

namespace StormClock.Service.Web.Api;

/// <summary>
/// Makes the document of the API when it is first asked for, and keeps its text. What it is made with lives in a container of its own, so
/// that a box that nobody asks carries none of it.
/// </summary>
internal sealed class ApiDescriber(EndpointDataSource addresses, IHostEnvironment environment)
{
    private string? text;

    public async Task WriteAsync(HttpContext context)
    {
        // Made twice by two who ask at once; it is the same text.
        text ??= await MakeAsync(context.RequestAborted);
        context.Response.ContentType = ApiBody.MediaType;
        await context.Response.WriteAsync(text, context.RequestAborted);
    }

    private async Task<string> MakeAsync(CancellationToken cancellation)
    {
        var services = new ServiceCollection();
        services.AddLogging().AddRouting().AddSingleton(addresses).AddSingleton(environment);
        services.ConfigureHttpJsonOptions(json => Json.Describe(json.SerializerOptions));
        services.AddOpenApi(ApiDocument.Name, ApiDocument.Describe);
        await using var provider = services.BuildServiceProvider();
        var document = await provider.GetRequiredKeyedService<IOpenApiDocumentProvider>(ApiDocument.Name).GetOpenApiDocumentAsync(cancellation);
        return await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1, cancellation);
    }
}
