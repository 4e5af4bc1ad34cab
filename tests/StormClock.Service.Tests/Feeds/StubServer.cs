using System.Collections.Concurrent;
using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Logging;

namespace StormClock.Service.Tests.Feeds;

/// <summary>A web server on this machine that answers, or fails to, as a test says.</summary>
internal sealed class StubServer : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly ConcurrentDictionary<string, RequestDelegate> answers = new();

    private StubServer(WebApplication app) => this.app = app;

    /// <summary>Every request so far, with its headers, in order.</summary>
    public ConcurrentQueue<(string Path, IHeaderDictionary Headers)> Asked { get; } = [];

    public static async Task<StubServer> StartAsync(X509Certificate2? certificate = null)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, listen =>
        {
            if (certificate is not null) listen.UseHttps(certificate);
            listen.Protocols = HttpProtocols.Http1;
        }));
        builder.WebHost.UseKestrelHttpsConfiguration();
        var app = builder.Build();
        var server = new StubServer(app);
        app.Run(server.AnswerAsync);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return server;
    }

    public Uri At(string path) => new(new Uri(app.Urls.First()), path);

    public void On(string path, RequestDelegate answer) => answers[path] = answer;

    public void OnBody(string path, byte[] body, Action<IHeaderDictionary>? headers = null) => On(path, async context =>
    {
        headers?.Invoke(context.Response.Headers);
        await context.Response.Body.WriteAsync(body);
    });

    public void OnStatus(string path, int status, Action<IHeaderDictionary>? headers = null) => On(path, context =>
    {
        headers?.Invoke(context.Response.Headers);
        context.Response.StatusCode = status;
        return Task.CompletedTask;
    });

    public int AskedFor(string path) => Asked.Count(asked => asked.Path == path);

    public static byte[] Gzip(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize)) gzip.Write(bytes);
        return packed.ToArray();
    }

    /// <summary>For this machine, signed by itself, good until yesterday.</summary>
    public static X509Certificate2 ExpiredCertificate()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=127.0.0.1", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var now = TimeProvider.System.GetUtcNow();
        return X509CertificateLoader.LoadPkcs12(request.CreateSelfSigned(now.AddDays(-30), now.AddDays(-1)).Export(X509ContentType.Pkcs12), null);
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();

    private Task AnswerAsync(HttpContext context)
    {
        var path = context.Request.Path.Value!;
        Asked.Enqueue((path, new HeaderDictionary(context.Request.Headers.ToDictionary())));
        if (answers.TryGetValue(path, out var answer)) return answer(context);
        context.Response.StatusCode = 404;
        return Task.CompletedTask;
    }
}
