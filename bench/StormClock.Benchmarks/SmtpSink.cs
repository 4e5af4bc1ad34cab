using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace StormClock.Benchmarks;

/// <summary>
/// A mail server on loopback that takes every letter and keeps none, in a process of its own. It says its port, and, when its
/// input ends, how many letters came and how many different ones.
/// </summary>
internal sealed class SmtpSink
{
    private readonly HashSet<string> ids = [];
    private readonly Lock gate = new();
    private int letters;

    public static async Task RunAsync()
    {
        var sink = new SmtpSink();
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        Say(((IPEndPoint)listener.LocalEndpoint).Port);
        _ = sink.AcceptAsync(listener);
        await Console.In.ReadToEndAsync();
        Say(sink.letters);
        Say(sink.ids.Count);
    }

    private async Task AcceptAsync(TcpListener listener)
    {
        while (true) _ = ServeAsync(await listener.AcceptTcpClientAsync());
    }

    private async Task ServeAsync(TcpClient client)
    {
        using var connection = client;
        connection.NoDelay = true;
        using var reader = new StreamReader(client.GetStream(), Encoding.Latin1);
        await using var writer = new StreamWriter(client.GetStream(), Encoding.ASCII) { NewLine = "\r\n", AutoFlush = true };
        await writer.WriteLineAsync("220 ready");
        while (await reader.ReadLineAsync() is { } line)
        {
            if (line == "DATA")
            {
                await writer.WriteLineAsync("354 go on");
                await TakeAsync(reader);
            }

            await writer.WriteLineAsync(line switch { "QUIT" => "221 bye", _ when line.StartsWith("EHLO", StringComparison.Ordinal) => "250-localhost\r\n250 PIPELINING", _ => "250 ok" });
        }
    }

    private async Task TakeAsync(StreamReader reader)
    {
        while (await reader.ReadLineAsync() is { } line && line != ".")
        {
            if (!line.StartsWith("Message-Id:", StringComparison.OrdinalIgnoreCase)) continue;
            lock (gate)
            {
                letters++;
                ids.Add(line);
            }
        }
    }

    private static void Say(int number) => Console.WriteLine(number.ToString(CultureInfo.InvariantCulture));
}
