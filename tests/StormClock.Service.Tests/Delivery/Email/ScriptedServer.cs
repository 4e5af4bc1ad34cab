using System.Net;
using System.Net.Sockets;
using System.Text;

namespace StormClock.Service.Tests.Delivery.Email;

/// <summary>
/// A mail server that follows a script: command (first four letters, or <c>greeting</c>, <c>content</c>) and the reply to
/// it. A null reply hangs up, <see cref="Silence"/> answers nothing. What is not in the script goes well.
/// </summary>
internal sealed class ScriptedServer : IAsyncDisposable
{
    public const string Silence = "";

    private readonly CancellationTokenSource stop = new();
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Dictionary<string, string?> script;
    private readonly Task running;

    public ScriptedServer(params (string Command, string? Reply)[] changes)
    {
        script = new Dictionary<string, string?>
        {
            ["greeting"] = "220 ready", ["EHLO"] = "250 localhost", ["MAIL"] = "250 ok", ["RCPT"] = "250 ok",
            ["DATA"] = "354 go on", ["content"] = "250 taken", ["RSET"] = "250 ok", ["QUIT"] = "221 bye",
        };
        foreach (var (command, reply) in changes) script[command] = reply;

        listener.Start();
        running = ServeAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await running;
        stop.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            using var client = await listener.AcceptTcpClientAsync(stop.Token);
            using var reader = new StreamReader(client.GetStream(), Encoding.UTF8);
            var talks = await ReplyAsync(client, "greeting");
            while (talks && await reader.ReadLineAsync(stop.Token) is { } line)
            {
                talks = await ReplyAsync(client, line[..4]);
                if (!talks || line != "DATA" || script["DATA"]?[0] != '3') continue;

                while (await reader.ReadLineAsync(stop.Token) is { } content && content != ".")
                {
                }

                talks = await ReplyAsync(client, "content");
            }
        }
        catch (Exception end) when (end is OperationCanceledException or IOException)
        {
            // The test is over, or the client hung up.
        }
    }

    /// <summary>False when the script hangs up here.</summary>
    private async Task<bool> ReplyAsync(TcpClient client, string command)
    {
        if (script[command] is not { } reply) return false;
        if (reply != Silence) await client.GetStream().WriteAsync(Encoding.UTF8.GetBytes(reply + "\r\n"), stop.Token);

        return true;
    }
}
