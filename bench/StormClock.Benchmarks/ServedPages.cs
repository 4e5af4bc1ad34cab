using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace StormClock.Benchmarks;

/// <summary>The program itself in a process of its own: the larger practice garden, as it is or with many more things, and wind in 40 hours by a note.</summary>
internal sealed class ServedPages : IAsyncDisposable
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "stormclock.dll");

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("stormclock-bench-");
    private Process? service;

    private ServedPages()
    {
    }

    public Uri Address { get; private set; } = null!;

    public long PeakMegabytes
    {
        get
        {
            service!.Refresh();
            return service.PeakWorkingSet64 >> 20;
        }
    }

    /// <param name="more">Things added to those of the practice garden, a pot of plants each.</param>
    public static async Task<ServedPages> StartAsync(int more)
    {
        var pages = new ServedPages();
        var port = FreePort();
        pages.Address = new($"http://127.0.0.1:{port}");
        var gardens = Directory.CreateDirectory(Path.Combine(pages.Config, "gardens")).FullName;
        await File.WriteAllTextAsync(Path.Combine(pages.Config, "stormclock.yaml"), $"pages:\n  listen: \"127.0.0.1:{port}\"\n");
        await File.WriteAllTextAsync(Path.Combine(gardens, "tern-hook.yaml"), await BookAsync(more));
        var from = TimeProvider.System.GetUtcNow().AddHours(40).ToString("yyyy-MM-ddTHH:mm'Z'", CultureInfo.InvariantCulture);
        using (var note = pages.Run("note", "wind", "--garden", "tern-hook", "--from", from, "--gust", "75 mph"))
        {
            await note.WaitForExitAsync();
            if (note.ExitCode != 0) throw new InvalidOperationException(await note.StandardError.ReadToEndAsync());
        }

        pages.service = pages.Run("serve");
        _ = pages.service.StandardOutput.ReadToEndAsync();
        _ = pages.service.StandardError.ReadToEndAsync();
        await pages.WaitForPlanAsync();
        return pages;
    }

    public async ValueTask DisposeAsync()
    {
        if (service is { HasExited: false })
        {
            service.Kill();
            await service.WaitForExitAsync();
        }

        service?.Dispose();
        folder.Delete(recursive: true);
    }

    private string Config => Path.Combine(folder.FullName, "config");

    private Process Run(params string[] arguments) => Process.Start(new ProcessStartInfo(
        "dotnet", [Program, .. arguments, "--config", Config, "--data", Path.Combine(folder.FullName, "data")])
    {
        RedirectStandardOutput = true, RedirectStandardError = true,
    })!;

    private async Task WaitForPlanAsync()
    {
        using var browser = new HttpClient { BaseAddress = Address };
        for (var tries = 0; tries < 600; tries++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200), TimeProvider.System);
            try
            {
                if ((await browser.GetStringAsync("/g/tern-hook/jobs")).Contains("class=\"jobs\"", StringComparison.Ordinal)) return;
            }
            catch (HttpRequestException)
            {
                // It does not listen yet.
            }
        }

        throw new InvalidOperationException("no plan came");
    }

    private static async Task<string> BookAsync(int more)
    {
        var text = new StringBuilder(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "config", "practice", "garden-tern-hook.yaml")));
        text.Replace("practice: true", "practice: false");
        string[] areas = ["porch", "street-side", "kitchen-yard", "back-fence", "tree-rows"];
        for (var number = 0; number < more; number++)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n  - {{id: more-{number}, name: Pot {number}, kind: potted_plant, area: {areas[number % areas.Length]}, count: {1 + number % 4}}}");
        }

        return text.Append('\n').ToString();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
