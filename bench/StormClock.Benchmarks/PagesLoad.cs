using System.Diagnostics;
using System.Net;

namespace StormClock.Benchmarks;

/// <summary>What a browser waits for: the first byte of every page, and how much comes; and what a flood of requests does.</summary>
internal static class PagesLoad
{
    private const int Rounds = 40;
    private const int Flood = 10_000;
    private const int Connections = 50;

    private static readonly string[] Paths =
    [
        "/", "/in", "/keeper", "/start", "/g/tern-hook/now", "/g/tern-hook/jobs", "/g/tern-hook/after", "/g/tern-hook/walk", "/g/tern-hook/walk/porch",
        "/g/tern-hook/walk/porch/satsuma-halves", "/g/tern-hook/plot-map", "/g/tern-hook/worry", "/g/tern-hook/storms", "/storm.css",
    ];

    public static async Task PrintAsync(int more)
    {
        await using var pages = await ServedPages.StartAsync(more);
        using var browser = NewBrowser(pages, decompress: false);
        Console.WriteLine($"{more} things more; first byte in ms (median, 95th of {Rounds}), bytes over the wire");
        foreach (var path in Paths)
        {
            var times = new List<double>();
            long bytes = 0;
            for (var round = -3; round < Rounds; round++)
            {
                var watch = Stopwatch.StartNew();
                using var answer = await browser.GetAsync(path, HttpCompletionOption.ResponseHeadersRead);
                await using var body = await answer.Content.ReadAsStreamAsync();
                var first = body.ReadByte();
                var took = watch.Elapsed.TotalMilliseconds;
                bytes = (first < 0 ? 0 : 1) + await LengthAsync(body);
                if (answer.StatusCode != HttpStatusCode.OK) throw new InvalidOperationException($"{path}: {answer.StatusCode}");
                if (round >= 0) times.Add(took);

                // Below the limit of requests a minute.
                await Task.Delay(TimeSpan.FromMilliseconds(60), TimeProvider.System);
            }

            times.Sort();
            Console.WriteLine($"{path,-45} {times[Rounds / 2],7:0.0} {times[Rounds * 95 / 100],7:0.0} {bytes,8}");
        }

        Console.WriteLine($"peak {pages.PeakMegabytes} MB");
    }

    /// <summary>10,000 requests as fast as they go, of pages, of links nobody gave and of forms without their mark; then one that counts.</summary>
    public static async Task FloodAsync()
    {
        await using var pages = await ServedPages.StartAsync(0);
        using var browser = NewBrowser(pages, decompress: true);
        string[] paths = ["/g/tern-hook/now", "/j/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", "/g/tern-hook/jobs", "/nothing/here", "/api/v1/gardens"];
        var answers = new int[600];
        var failed = 0;
        var number = -1;
        var watch = Stopwatch.StartNew();
        await Task.WhenAll(Enumerable.Range(0, Connections).Select(async _ =>
        {
            while (Interlocked.Increment(ref number) is var mine && mine < Flood)
            {
                try
                {
                    using var answer = mine % 10 == 9
                        ? await browser.PostAsync("/g/tern-hook/answer", new FormUrlEncodedContent([new("press", "done satsuma-halves/lay_flat")]))
                        : await browser.GetAsync(paths[mine % paths.Length]);
                    Interlocked.Increment(ref answers[(int)answer.StatusCode]);
                }
                catch (HttpRequestException)
                {
                    Interlocked.Increment(ref failed);
                }
            }
        }));
        Console.WriteLine($"{Flood} requests in {watch.Elapsed.TotalSeconds:0.0} s: {string.Join(", ", answers.Select((count, status) => (count, status)).Where(one => one.count > 0).Select(one => $"{one.count} x {one.status}"))}, {failed} without an answer; peak {pages.PeakMegabytes} MB");

        await Task.Delay(TimeSpan.FromSeconds(61), TimeProvider.System);
        var text = await browser.GetStringAsync("/g/tern-hook/now");
        Console.WriteLine($"a minute later: {text.Length} characters of the page Now");
    }

    private static HttpClient NewBrowser(ServedPages pages, bool decompress)
    {
        var browser = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, MaxConnectionsPerServer = Connections, AutomaticDecompression = decompress ? DecompressionMethods.All : DecompressionMethods.None }) { BaseAddress = pages.Address };
        if (!decompress) browser.DefaultRequestHeaders.AcceptEncoding.ParseAdd("gzip");
        return browser;
    }

    private static async Task<long> LengthAsync(Stream body)
    {
        var buffer = new byte[1 << 16];
        long all = 0;
        while (await body.ReadAsync(buffer) is var read && read > 0) all += read;
        return all;
    }
}
