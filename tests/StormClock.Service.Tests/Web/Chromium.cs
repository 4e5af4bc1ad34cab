using System.Diagnostics;
using System.Globalization;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StormClock.Service.Tests.Web;

/// <summary>A real browser without a window, spoken to over its own debugging protocol; for tests that are run by hand.</summary>
internal sealed class Chromium : IAsyncDisposable
{
    private const string Program = "/usr/bin/chromium";

    private static readonly JsonSerializerOptions Short = new() { DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull };

    private readonly DirectoryInfo profile;
    private readonly Process process;
    private readonly ClientWebSocket socket = new();
    private int lastId;

    private Chromium(DirectoryInfo profile, Process process)
    {
        this.profile = profile;
        this.process = process;
    }

    public static bool IsHere => File.Exists(Program);

    /// <summary>Everything the browser said unasked.</summary>
    public List<JsonNode> Events { get; } = [];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<Chromium> StartAsync()
    {
        var profile = Directory.CreateTempSubdirectory("stormclock-chromium-");
        string[] arguments = ["--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--remote-debugging-port=0", $"--user-data-dir={profile.FullName}", "about:blank"];
        var browser = new Chromium(profile, Process.Start(new ProcessStartInfo(Program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!);
        var port = Path.Combine(profile.FullName, "DevToolsActivePort");
        for (var tries = 0; !File.Exists(port) || File.ReadAllLines(port).Length < 2; tries++)
        {
            Assert.True(tries < 300, "the browser did not start");
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, Cancel);
        }

        var lines = await File.ReadAllLinesAsync(port, Cancel);
        await browser.socket.ConnectAsync(new($"ws://127.0.0.1:{int.Parse(lines[0], CultureInfo.InvariantCulture)}{lines[1]}"), Cancel);
        return browser;
    }

    /// <summary>Asks one thing and waits for its answer.</summary>
    public async Task<JsonNode> AskAsync(string method, object parameters, string? session = null)
    {
        var id = ++lastId;
        await socket.SendAsync(JsonSerializer.SerializeToUtf8Bytes(new { id, method, @params = parameters, sessionId = session }, Short), WebSocketMessageType.Text, true, Cancel);
        while (true)
        {
            var said = await HearAsync();
            if (said["id"]?.GetValue<int>() != id)
            {
                Events.Add(said);
                continue;
            }

            Assert.True(said["error"] is null, said.ToJsonString());
            return said["result"]!;
        }
    }

    /// <summary>The value of an expression in the page, awaited.</summary>
    public async Task<string> EvaluateAsync(string session, string expression)
    {
        var answer = await AskAsync("Runtime.evaluate", new { expression, awaitPromise = true, returnByValue = true }, session);
        Assert.True(answer["exceptionDetails"] is null, answer.ToJsonString());
        return answer["result"]!["value"]?.ToString() ?? "";
    }

    public async ValueTask DisposeAsync()
    {
        socket.Dispose();
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync(CancellationToken.None);
        process.Dispose();
        profile.Delete(recursive: true);
    }

    private async Task<JsonNode> HearAsync()
    {
        var text = new MemoryStream();
        var buffer = new byte[16384];
        while (true)
        {
            var part = await socket.ReceiveAsync(buffer, Cancel);
            text.Write(buffer, 0, part.Count);
            if (part.EndOfMessage) return JsonNode.Parse(Encoding.UTF8.GetString(text.ToArray()))!;
        }
    }
}
