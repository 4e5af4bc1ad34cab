using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Store;
using StormClock.StoreTorture;

namespace StormClock.Service.Tests.Outbox;

/// <summary>
/// A process that sends a heap of letters to a real mail server is killed with signal 9 again and again. Every letter arrives; only one whose answer
/// was lost arrives twice, then with the same bytes.
/// </summary>
public class KilledSenderTests(ITestOutputHelper output)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public Task Killed_FiftyTimes_LosesNothingAndRepeatsOnlyTheUnanswered() => KillAsync(kills: 50, letters: 400, seed: 5);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public Task Killed_ThousandTimes_LosesNothingAndRepeatsOnlyTheUnanswered() => KillAsync(kills: 1000, letters: 8000, seed: 6);

    private async Task KillAsync(int kills, int letters, int seed)
    {
        var random = new Random(seed);
        using var folder = new TempFolder();
        using (var store = StormStore.Open(folder.Path))
        {
            await store.WriteAsync(transaction => { for (var i = 0; i < letters; i++) OutboxTable.Insert(transaction, Workload.EntryOf(i)); }, Cancel);
        }

        using var letterHere = new SemaphoreSlim(0);
        await using var server = new SmtpHost(beforeAnswer: async _ =>
        {
            letterHere.Release();
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        });
        var unanswered = new HashSet<string>();
        for (var killed = 0; killed < kills; killed++)
        {
            using var process = Start(folder.Path, server.Port, minutes: 0);
            var end = process.WaitForExitAsync(Cancel);
            await Task.WhenAny(end, letterHere.WaitAsync(Cancel));
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(200)), TimeProvider.System, Cancel);
            Assert.False(process.HasExited, "nothing was left to be killed over: more letters are needed");
            process.Kill();
            await end;
            using (var store = StormStore.Open(folder.Path)) unanswered.UnionWith(store.Read(reader => OutboxTable.InState(reader, OutboxState.Claimed)).Select(entry => entry.Message.MessageId));
            while (letterHere.Wait(0, Cancel)) continue;
        }

        using (var last = Start(folder.Path, server.Port, minutes: 60)) await last.WaitForExitAsync(Cancel);

        var arrived = server.Letters.Zip(server.Raw).ToLookup(letter => letter.First.MessageId!, letter => letter.Second);
        var twice = arrived.Where(same => same.Count() > 1).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kills} kills, {letters} letters, {unanswered.Count} of them unanswered at a kill, {twice.Count} came twice"));
        Assert.Equal(Enumerable.Range(0, letters).Select(number => Workload.EntryOf(number).Message.MessageId).Order(), arrived.Select(same => same.Key).Order());
        Assert.All(twice, same => Assert.Contains(same.Key, unanswered));
        Assert.All(twice, same => Assert.Single(same.Distinct()));
        Assert.NotEmpty(unanswered);
        using var after = StormStore.Open(folder.Path);
        Assert.Equal(letters, after.Read(reader => OutboxTable.Count(reader, OutboxState.Sent)));
    }

    private static Process Start(string folder, int port, int minutes)
    {
        var dotnet = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));
        var start = new ProcessStartInfo(dotnet) { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var argument in new[] { Path.Combine(AppContext.BaseDirectory, "StormClock.StoreTorture.dll"), folder, "send", $"{port}", $"{minutes}" }) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }
}
