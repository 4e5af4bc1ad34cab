using System.Text;
using Microsoft.AspNetCore.Http;

namespace StormClock.Service.Tests.Feeds;

/// <summary>The ways in which a server on the net can fail us, by name.</summary>
internal static class Faults
{
    private static readonly byte[] Page = Encoding.UTF8.GetBytes("<!DOCTYPE html><html><body><h1>Log in to the hotel's network</h1></body></html>");

    public static readonly Dictionary<string, RequestDelegate> ByName = new()
    {
        ["404"] = Status(404),
        ["304 that nobody asked for"] = Status(304),
        ["429 with Retry-After"] = Status(429, ("Retry-After", "120")),
        ["500"] = Status(500),
        ["503 with Retry-After"] = Status(503, ("Retry-After", "120")),
        ["HTML with 200"] = context => context.Response.Body.WriteAsync(Page).AsTask(),
        ["empty"] = Status(200),
        ["truncated gzip"] = context => BytesAsync(context, "gzip", StubServer.Gzip(System.Security.Cryptography.RandomNumberGenerator.GetBytes(50_000))[..9000]),
        ["truncated brotli"] = context => BytesAsync(context, "br", Brotli(System.Security.Cryptography.RandomNumberGenerator.GetBytes(50_000))[..9000]),
        ["unknown packing"] = context => BytesAsync(context, "zstd", new byte[100]),
        ["oversized"] = context => ZerosAsync(context, 5 * 1024 * 1024),
        ["compression bomb"] = context => BytesAsync(context, "gzip", StubServer.Gzip(new byte[256 * 1024 * 1024])),
        ["stall"] = context => Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, context.RequestAborted),
        ["drip"] = DripAsync,
        ["reset"] = context =>
        {
            context.Abort();
            return Task.CompletedTask;
        },
        ["wrong length"] = async context =>
        {
            context.Response.ContentLength = 5000;
            await context.Response.Body.WriteAsync(new byte[100]);
            await context.Response.Body.FlushAsync();
            context.Abort();
        },
        ["redirect loop"] = Status(302, ("Location", "/bad")),
        ["redirect to another host"] = Status(301, ("Location", "https://elsewhere.invalid/")),
        ["redirect to plain http"] = Status(301, ("Location", "http://elsewhere.invalid/")),
    };

    private static byte[] Brotli(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var brotli = new System.IO.Compression.BrotliStream(packed, System.IO.Compression.CompressionLevel.Fastest)) brotli.Write(bytes);
        return packed.ToArray();
    }

    private static RequestDelegate Status(int status, params (string Name, string Value)[] headers) => context =>
    {
        foreach (var (name, value) in headers) context.Response.Headers[name] = value;
        context.Response.StatusCode = status;
        return Task.CompletedTask;
    };

    private static async Task BytesAsync(HttpContext context, string encoding, byte[] bytes)
    {
        context.Response.Headers.ContentEncoding = encoding;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    private static async Task ZerosAsync(HttpContext context, int count)
    {
        for (var sent = 0; sent < count; sent += 64 * 1024) await context.Response.Body.WriteAsync(new byte[64 * 1024], context.RequestAborted);
    }

    private static async Task DripAsync(HttpContext context)
    {
        while (!context.RequestAborted.IsCancellationRequested)
        {
            await context.Response.Body.WriteAsync("."u8.ToArray(), context.RequestAborted);
            await context.Response.Body.FlushAsync(context.RequestAborted);
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, context.RequestAborted);
        }
    }
}
