using System.Diagnostics;
using System.Globalization;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>
/// A rehearsal in a real process is killed with signal 9 again and again, some of the times while the mail server has a
/// letter and has not answered. What arrives in the end is what an unbroken rehearsal sends, byte for byte.
/// </summary>
public class KilledRehearsalTests(ITestOutputHelper output)
{
    private static readonly string[] SmallGarden =
        ["--garden", Path.Combine(ConfigFiles.Folder, "practice", "garden-saltbush-court.yaml"), "--at", "30.08,-84.16"];

    [Fact]
    public Task Killed_SixTimes_SendsWhatAnUnbrokenRehearsalSends() => KillAsync(kills: 6, seed: 11, SmallGarden);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public Task Killed_FiftyTimes_SendsWhatAnUnbrokenRehearsalSends() => KillAsync(kills: 50, seed: 12, []);

    private async Task KillAsync(int kills, int seed, string[] garden)
    {
        using var folder = new TempFolder();
        using var whole = NewData();
        using var broken = NewData();

        var watch = Stopwatch.StartNew();
        await using var calm = new SmtpHost();
        var (exit, _, errors) = await ServiceProcess.RunAsync(folder.Path, Arguments(calm, whole.Path, garden));
        Assert.True(exit == 0, errors);
        var unbroken = watch.Elapsed;

        var random = new Random(seed);
        var letterHere = new SemaphoreSlim(0);
        await using var slow = new SmtpHost(beforeAnswer: async _ =>
        {
            letterHere.Release();
            await Task.Delay(TimeSpan.FromMilliseconds(250), TimeProvider.System);
        });
        var maybeTwice = new HashSet<string>();
        for (var kill = 0; kill < kills; kill++)
        {
            using var process = ServiceProcess.Start(folder.Path, Arguments(slow, broken.Path, garden));
            if (kill % 3 == 2) await Task.Delay(unbroken * random.NextDouble() / 2, TimeProvider.System, TestContext.Current.CancellationToken);
            else for (var letters = random.Next(1, 4); letters > 0; letters--) await letterHere.WaitAsync(unbroken, TestContext.Current.CancellationToken);
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(300)), TimeProvider.System, TestContext.Current.CancellationToken);
            process.Kill();
            await process.EndAsync();
            maybeTwice.UnionWith(Interrupted(broken.Path));
            while (letterHere.Wait(0, TestContext.Current.CancellationToken))
            {
            }
        }

        (exit, _, errors) = await ServiceProcess.RunAsync(folder.Path, Arguments(slow, broken.Path, garden));
        Assert.True(exit == 0, errors);

        var expected = calm.Letters.Zip(calm.Raw).ToDictionary(letter => letter.First.MessageId!, letter => letter.Second);
        var arrived = slow.Letters.Zip(slow.Raw).ToLookup(letter => letter.First.MessageId!, letter => letter.Second);
        var twice = arrived.Where(letters => letters.Count() > 1).ToList();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{kills} kills, {maybeTwice.Count} entries found claimed, {twice.Sum(letters => letters.Count() - 1)} resends of {expected.Count} letters; unbroken {unbroken.TotalSeconds:F1} s, in all {watch.Elapsed.TotalSeconds:F1} s"));
        Assert.Equal(expected.Count, calm.Letters.Count);
        Assert.Equal(Subjects(calm), Subjects(slow));
        Assert.Equal(expected.Keys.Order(), arrived.Select(letters => letters.Key).Order());
        Assert.All(arrived, letters => Assert.All(letters, letter => Assert.Equal(expected[letters.Key], letter)));
        Assert.All(twice, letters => Assert.Contains(letters.Key, maybeTwice));
        Assert.True(maybeTwice.Count > 0, "no kill fell into a delivery");
    }

    private static IEnumerable<string> Subjects(SmtpHost host) =>
        host.Letters.DistinctBy(letter => letter.MessageId).OrderBy(letter => letter.Date).ThenBy(letter => letter.To.ToString(), StringComparer.Ordinal).Select(letter => $"{letter.Date:u} {letter.To}: {letter.Subject}");

    private static string[] Arguments(SmtpHost server, string data, string[] garden) =>
    [
        "rehearse", "--acks", "none", "--smtp", string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{server.Port}"),
        "--data", data, "--out", Path.Combine(data, "out"), "--config", ConfigFiles.Folder, .. garden,
    ];

    /// <summary>The letters whose fate a dead process did not know; asked of a copy, so that the next process must recover by itself.</summary>
    private static IEnumerable<string> Interrupted(string data)
    {
        using var copy = new TempFolder();
        foreach (var file in Directory.GetFiles(data, "*.db")) File.Copy(file, copy.File(Path.GetFileName(file)));
        using var store = StormStore.Open(copy.Path);
        return store.Read(reader => OutboxTable.InState(reader, OutboxState.Claimed)).Select(entry => entry.Message.MessageId);
    }

    /// <summary>A data folder whose ids and link keys are the same every time, so that letters can be compared.</summary>
    private static TempFolder NewData()
    {
        var folder = new TempFolder();
        File.WriteAllText(folder.File("link-keys"), $"k1 {Convert.ToBase64String(new byte[32])}\n");
        using var store = StormStore.Open(folder.Path);
        store.WriteAsync(transaction => Meta.Put(transaction, "installationId", "end to end")).GetAwaiter().GetResult();
        return folder;
    }
}
