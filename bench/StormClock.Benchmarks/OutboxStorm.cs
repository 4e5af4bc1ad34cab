using System.Diagnostics;
using System.Globalization;
using StormClock.Core.Reminders;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Benchmarks;

/// <summary>
/// A whole outbox of due letters handed to a mail server in another process, every claim and every settlement on the disk.
/// By the real clock: it is the waiting for disk and server that counts.
/// </summary>
internal static class OutboxStorm
{
    /// <summary>As long as a letter of the practice storm with ten jobs.</summary>
    private static readonly string Text = string.Concat(Enumerable.Range(1, 40).Select(line => $"{line}. Strap: Arbor {line} over the path. 32 min, bring rope 60 ft, ground anchor 4. Start Wed 14:00.\n"));

    private static readonly ProviderClock Clock = new ProviderClock(TimeProvider.System);

    private static readonly string Html = string.Concat(Text.Split('\n').Select(line => $"<p style=\"margin:0 0 8px;font:16px sans-serif;color:#222\"><b>{line}</b></p>\n"));

    public static async Task RunAsync(int count)
    {
        var folder = Directory.CreateTempSubdirectory("stormclock-bench-");
        using var sink = Process.Start(new ProcessStartInfo("dotnet", [typeof(OutboxStorm).Assembly.Location, "smtp-sink"])
        {
            RedirectStandardInput = true, RedirectStandardOutput = true,
        })!;
        try
        {
            var port = await NumberAsync(sink);
            using var store = StormStore.Open(folder.FullName);
            await FillAsync(store, count);
            using var dispatcher = new Dispatcher(store, [new SmtpChannel(Settings(port))], Clock);

            var cpu = Environment.CpuUsage.TotalTime;
            var watch = Stopwatch.StartNew();
            var run = await dispatcher.RunAsync(CancellationToken.None);
            var (took, used) = (watch.Elapsed, Environment.CpuUsage.TotalTime - cpu);

            sink.StandardInput.Close();
            var (letters, different) = (await NumberAsync(sink), await NumberAsync(sink));
            var sent = run.Settled.Count(entry => entry.State == OutboxState.Sent);
            Console.WriteLine(
                $"{count} letters: {took.TotalSeconds:0.0} s, {took.TotalMilliseconds / count:0.00} ms each, {used.TotalSeconds:0.0} s of CPU, peak {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB; "
                + $"{sent} settled as sent, {letters} came, {different} different");
        }
        finally
        {
            if (!sink.HasExited) sink.Kill();
            folder.Delete(recursive: true);
        }
    }

    private static async Task FillAsync(StormStore store, int count)
    {
        foreach (var part in Enumerable.Range(0, count).Chunk(500))
        {
            await store.WriteAsync(transaction =>
            {
                foreach (var number in part) OutboxTable.Insert(transaction, Entry(number));
            });
        }
    }

    private static OutboxEntry Entry(int number)
    {
        var key = new ReminderKey($"garden-{number / 20}", "2027-1", $"person-{number % 20}", ReminderReason.StageChanged, "bench", "email");
        var ids = OutboxIds.For(key, "bench");
        var written = Clock.GetCurrentInstant();
        return new OutboxEntry(
            ids.EntryId, key.ToString(), "email", key.GardenId, key.PersonId, nameof(ReminderReason.StageChanged), "bench", ["b1", "b2"],
            new Outgoing(ids.EntryId, ids.MessageId, ids.ThreadId, "Ada", "ada@garden.example", "Stop by Wed 14:00 EDT: Main work", Text, Html, written),
            written, written, written + Duration.FromHours(6), number % 10 == 0, OutboxState.Waiting, 0, written, null, null);
    }

    private static EmailSettings Settings(int port) =>
        new("127.0.0.1", port, EmailSecurity.None, new("Garden box", "box@garden.example"), Duration.FromSeconds(30), CheckRevocation: false);

    private static async Task<int> NumberAsync(Process process) => int.Parse((await process.StandardOutput.ReadLineAsync())!, CultureInfo.InvariantCulture);
}
