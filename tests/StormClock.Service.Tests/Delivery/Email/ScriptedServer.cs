using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace StormClock.Service.Tests.Delivery.Email;

/// <summary>
/// A mail server that follows a script: how a line begins (or <c>greeting</c>, <c>content</c>) and the reply to it, the longest
/// such beginning first. A null reply hangs up, <see cref="Silence"/> answers nothing. What is not in the script goes well.
/// </summary>
internal sealed class ScriptedServer : IAsyncDisposable
{
    public const string Silence = "";

    private readonly CancellationTokenSource stop = new();
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Task running;
    private Dictionary<string, string?> script = [];

    public ScriptedServer(params (string Command, string? Reply)[] changes)
    {
        Follow(changes);
        listener.Start();
        running = AcceptAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public int Connections { get; private set; }

    /// <summary>Message-IDs of the letters that arrived whole and were not refused, in order.</summary>
    public ConcurrentQueue<string> Arrived { get; } = [];

    /// <summary>From now on all goes well but for these.</summary>
    public void Follow(params (string Command, string? Reply)[] changes)
    {
        var next = new Dictionary<string, string?>
        {
            ["greeting"] = "220 ready", ["EHLO"] = "250 localhost", ["DATA"] = "354 go on", ["content"] = "250 taken", ["QUIT"] = "221 bye", [""] = "250 ok",
        };
        foreach (var (command, reply) in changes) next[command] = reply;
        script = next;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await running;
        stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        var talks = new List<Task>();
        try
        {
            while (true)
            {
                var client = await listener.AcceptTcpClientAsync(stop.Token);
                Connections++;
                talks.Add(ServeAsync(client));
            }
        }
        catch (Exception end) when (end is OperationCanceledException or SocketException || stop.IsCancellationRequested)
        {
            await Task.WhenAll(talks);
        }
    }

    private async Task ServeAsync(TcpClient client)
    {
        using var own = client;
        try
        {
            using var reader = new StreamReader(client.GetStream(), Encoding.UTF8);
            var talks = await ReplyAsync(client, "greeting");
            while (talks && await reader.ReadLineAsync(stop.Token) is { } line)
            {
                talks = await ReplyAsync(client, line);
                if (!talks || line != "DATA" || Reply("DATA") is not ['3', ..]) continue;

                var id = await ReadContentAsync(reader);
                if (Reply("content") is null or Silence or ['2', ..]) Arrived.Enqueue(id);
                talks = await ReplyAsync(client, "content");
            }
        }
        catch (Exception end) when (end is OperationCanceledException or IOException)
        {
            // The test is over, or the client hung up.
        }
    }

    private async Task<string> ReadContentAsync(StreamReader reader)
    {
        var id = "";
        while (await reader.ReadLineAsync(stop.Token) is { } content && content != ".")
        {
            if (content.StartsWith("Message-Id: ", StringComparison.OrdinalIgnoreCase)) id = content["Message-Id: ".Length..];
        }

        return id;
    }

    private string? Reply(string line) => script[script.Keys.Where(line.StartsWith).MaxBy(key => key.Length)!];

    /// <summary>False when the script hangs up here.</summary>
    private async Task<bool> ReplyAsync(TcpClient client, string line)
    {
        if (Reply(line) is not { } reply) return false;
        if (reply != Silence) await client.GetStream().WriteAsync(Encoding.UTF8.GetBytes(reply + "\r\n"), stop.Token);

        return true;
    }
}
