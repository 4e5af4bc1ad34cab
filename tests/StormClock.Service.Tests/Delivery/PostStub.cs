using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace StormClock.Service.Tests.Delivery;

/// <summary>What a push service or gateway got.</summary>
internal sealed record Posted(string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body);

/// <summary>A server on loopback that takes posts, answers as told and keeps everything.</summary>
internal sealed class PostStub : IAsyncDisposable
{
    private readonly WebApplication app;

    private PostStub(WebApplication app)
    {
        this.app = app;
        Address = new(app.Urls.Single());
    }

    public Uri Address { get; }

    public ConcurrentQueue<Posted> Got { get; } = [];

    public Func<string, int> Status { get; set; } = _ => StatusCodes.Status201Created;

    public string? RetryAfter { get; set; }

    public static async Task<PostStub> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        PostStub? stub = null;
        app.Run(context => stub!.TakeAsync(context));
        await app.StartAsync(TestContext.Current.CancellationToken);
        return stub = new PostStub(app);
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();

    private async Task TakeAsync(HttpContext context)
    {
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body);
        Got.Enqueue(new(context.Request.Path, context.Request.Headers.ToDictionary(header => header.Key, header => header.Value.ToString(), StringComparer.OrdinalIgnoreCase), body.ToArray()));
        context.Response.StatusCode = Status(context.Request.Path);
        if (RetryAfter is not null) context.Response.Headers.RetryAfter = RetryAfter;
    }
}
