using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Replies;

namespace StormClock.Service.Tests.Replies;

/// <param name="Arrived">Its internal date.</param>
internal sealed record BoxedMail(uint Uid, byte[] Bytes, Instant Arrived)
{
    public bool Seen { get; set; }
}

/// <summary>
/// As much of an IMAP server (RFC 9051) as a look takes, on this machine: one folder and one to move to. It keeps what was
/// asked of it, and a test may let it fail at a command.
/// </summary>
internal sealed partial class MailboxServer : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Task running;
    private uint next = 1;

    public MailboxServer()
    {
        listener.Start();
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        running = ServeAsync();
    }

    public int Port { get; }

    public uint Validity { get; set; } = 7;

    public List<BoxedMail> Mails { get; } = [];

    public List<BoxedMail> Moved { get; } = [];

    /// <summary>Commands without their tags, in order.</summary>
    public ConcurrentQueue<string> Asked { get; } = [];

    /// <summary>What happens instead of an answer: null answers, "" hangs up, anything else is said in place of the answer.</summary>
    public Func<string, string?> Fault { get; set; } = _ => null;

    public ReplyMailbox Mailbox(string? moveTo = null, double timeoutS = 10) =>
        new("127.0.0.1", Port, EmailSecurity.None, "garden", "pass word\"\\", "INBOX", moveTo, Duration.FromSeconds(timeoutS));

    public uint Put(byte[] mail, Instant arrived)
    {
        lock (Mails) Mails.Add(new(next, mail, arrived));
        return next++;
    }

    /// <summary>The mailbox is built anew: other numbers for the same mails.</summary>
    public void Renumber()
    {
        lock (Mails)
        {
            Validity++;
            next = 1;
            var all = Mails.Select(mail => mail with { Uid = next++ }).ToList();
            Mails.Clear();
            Mails.AddRange(all);
        }
    }

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
            while (true)
            {
                using var client = await listener.AcceptTcpClientAsync(stop.Token);
                try
                {
                    await TalkAsync(client.GetStream());
                }
                catch (IOException)
                {
                    // The client hung up.
                }
            }
        }
        catch (Exception end) when (end is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task TalkAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.Latin1);
        await SayAsync(stream, Fault("greeting") ?? "* OK [CAPABILITY IMAP4rev1 MOVE UIDPLUS AUTH=PLAIN SASL-IR] ready\r\n");
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            var (tag, command) = (line[..line.IndexOf(' ')], line[(line.IndexOf(' ') + 1)..]);
            Asked.Enqueue(command);
            if (Fault(command) is { } fault)
            {
                if (fault.Length == 0) return;
                await SayAsync(stream, fault.Replace("TAG", tag, StringComparison.Ordinal));
                continue;
            }

            await stream.WriteAsync(Answer(tag, command), stop.Token);
            if (command == "LOGOUT") return;
        }
    }

    private async Task SayAsync(NetworkStream stream, string text) => await stream.WriteAsync(Encoding.Latin1.GetBytes(text), stop.Token);

    private byte[] Answer(string tag, string command)
    {
        var answer = new MemoryStream();
        void Say(string text) => answer.Write(Encoding.Latin1.GetBytes(text));
        lock (Mails)
        {
            switch (command)
            {
                case "CAPABILITY":
                    Say("* CAPABILITY IMAP4rev1 MOVE UIDPLUS AUTH=PLAIN SASL-IR\r\n");
                    break;
                case var list when list.StartsWith("LIST ", StringComparison.Ordinal) && list.EndsWith("\"\"", StringComparison.Ordinal):
                    Say("* LIST (\\Noselect) \"/\" \"\"\r\n");
                    break;
                case var list when list.StartsWith("LIST ", StringComparison.Ordinal):
                    if (list.Contains("INBOX", StringComparison.Ordinal)) Say("* LIST () \"/\" INBOX\r\n");
                    if (list.Contains("Answers", StringComparison.Ordinal)) Say("* LIST () \"/\" Answers\r\n");
                    break;
                case "EXAMINE INBOX" or "SELECT INBOX":
                    Say($"* {Mails.Count} EXISTS\r\n* 0 RECENT\r\n* FLAGS (\\Seen \\Deleted)\r\n* OK [PERMANENTFLAGS (\\Seen \\Deleted)] ok\r\n");
                    Say($"* OK [UIDVALIDITY {Validity}] ok\r\n* OK [UIDNEXT {next}] ok\r\n");
                    break;
                case var search when search.StartsWith("UID SEARCH", StringComparison.Ordinal):
                    Say($"* SEARCH{string.Concat(Found(search).Select(mail => $" {mail.Uid}"))}\r\n");
                    break;
                case var fetch when fetch.StartsWith("UID FETCH", StringComparison.Ordinal):
                    foreach (var mail in Named(fetch)) Fetch(answer, mail, fetch);
                    break;
                case var store when store.StartsWith("UID STORE", StringComparison.Ordinal):
                    foreach (var mail in Named(store)) mail.Seen |= store.Contains("\\Seen", StringComparison.OrdinalIgnoreCase);
                    break;
                case var move when move.StartsWith("UID MOVE", StringComparison.Ordinal):
                    var gone = Named(move).ToList();
                    Moved.AddRange(gone);
                    Mails.RemoveAll(gone.Contains);
                    break;
                case "LOGOUT":
                    Say("* BYE\r\n");
                    break;
            }
        }

        var access = command.StartsWith("EXAMINE", StringComparison.Ordinal) ? "[READ-ONLY] " : command.StartsWith("SELECT", StringComparison.Ordinal) ? "[READ-WRITE] " : "";
        Say($"{tag} OK {access}done\r\n");
        return answer.ToArray();
    }

    private IEnumerable<BoxedMail> Found(string search)
    {
        if (Since().Match(search) is { Success: true } since)
        {
            var day = LocalDate.FromDateTime(DateTime.ParseExact(since.Groups[1].Value, "d-MMM-yyyy", CultureInfo.InvariantCulture));
            return Mails.Where(mail => mail.Arrived.InUtc().Date >= day);
        }

        var from = uint.Parse(Range().Match(search).Groups[1].Value, CultureInfo.InvariantCulture);
        return Mails.Where(mail => mail.Uid >= from || mail == Mails[^1]);
    }

    private IEnumerable<BoxedMail> Named(string command)
    {
        var sets = command.Split(' ')[2].Split(',').Select(set => set.Split(':').Select(number => uint.Parse(number, CultureInfo.InvariantCulture)).ToList()).ToList();
        return Mails.Where(mail => sets.Any(set => mail.Uid >= set[0] && mail.Uid <= set[^1]));
    }

    private void Fetch(MemoryStream answer, BoxedMail mail, string fetch)
    {
        void Say(string text) => answer.Write(Encoding.Latin1.GetBytes(text));
        var end = mail.Bytes.AsSpan().IndexOf("\r\n\r\n"u8);
        Say($"* {Mails.IndexOf(mail) + 1} FETCH (UID {mail.Uid}");
        if (fetch.Contains("INTERNALDATE", StringComparison.Ordinal))
            Say($" INTERNALDATE \"{mail.Arrived.ToDateTimeUtc().ToString("dd-MMM-yyyy HH:mm:ss", CultureInfo.InvariantCulture)} +0000\"");
        if (Fields().Match(fetch) is { Success: true } fields)
        {
            var head = end < 0 ? mail.Bytes : mail.Bytes[..(end + 4)];
            Say($" BODY{fields.Groups[1].Value} {{{head.Length}}}\r\n");
            answer.Write(head);
        }

        if (Part().Match(fetch) is { Success: true } part)
        {
            var bytes = mail.Bytes.AsSpan(..Math.Min(mail.Bytes.Length, int.Parse(part.Groups[1].Value, CultureInfo.InvariantCulture)));
            Say($" BODY[]<0> {{{bytes.Length}}}\r\n");
            answer.Write(bytes);
        }

        Say(")\r\n");
    }

    [GeneratedRegex(@"SINCE (\S+)")]
    private static partial Regex Since();

    [GeneratedRegex(@"UID (\d+):")]
    private static partial Regex Range();

    [GeneratedRegex(@"BODY\.PEEK(\[HEADER\.FIELDS \([^)]*\)\])")]
    private static partial Regex Fields();

    [GeneratedRegex(@"BODY\.PEEK\[\]<0\.(\d+)>")]
    private static partial Regex Part();
}
