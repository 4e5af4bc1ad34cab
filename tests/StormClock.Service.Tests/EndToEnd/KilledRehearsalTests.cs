using System.Diagnostics;
using System.Globalization;
using System.Text;
using MimeKit;
using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>
/// A rehearsal in a real process is killed with signal 9 again and again, some of the times while the mail server has a
/// letter and has not answered. What arrives in the end is what an unbroken rehearsal sends, byte for byte but for what is enclosed.
/// </summary>
public class KilledRehearsalTests(ITestOutputHelper output)
{
    private static readonly string[] SmallGarden =
        ["--garden", Path.Combine(ConfigFiles.Folder, "practice", "garden-saltbush-court.yaml"), "--at", "30.08,-84.16"];

    [Fact]
    public Task Killed_SixTimes_SendsWhatAnUnbrokenRehearsalSends() => KillAsync(kills: 6, seed: 11, [.. SmallGarden, "--acks", "none"]);

    /// <summary>People who had their letter before the break still press its links after it.</summary>
    [Fact]
    public async Task Killed_BetweenALetterAndItsPresses_PressesThemWhenItGoesOn()
    {
        using var data = NewData();
        await using var server = new SmtpHost();
        string[] arguments = [.. Arguments(server, data.Path, SmallGarden), "--acks", "prompt"];
        using (var process = ServiceProcess.Start(data.Path, arguments))
        {
            await process.HearAsync(said => said.Contains("the day's work"));
            process.Kill();
            await process.EndAsync();
        }

        var rest = await ServiceProcess.RunAsync(data.Path, arguments);

        Assert.Equal((0, ""), (rest.Exit, rest.Errors));
        using var store = StormStore.Open(data.Path);
        var day = Assert.Single(store.Read(reader => OutboxTable.OfGarden(reader, "saltbush-court")), entry => entry is { Reason: "WorkDay", State: OutboxState.Sent });
        var states = store.Read(reader => JobStates.OfEpisode(reader, "saltbush-court", day.Key.Split('|')[1]));
        Assert.Equal(5, day.JobIds.Count);
        Assert.Equal(day.JobIds.Order(), states.Where(state => state.Progress == JobProgress.Done).Select(state => state.JobId).Order());
    }

    [Fact(Explicit = true), Trait("Category", "Long")]
    public Task Killed_FiveHundredTimes_SendsWhatAnUnbrokenRehearsalSends() => KillAsync(kills: 500, seed: 12, ["--acks", "none"]);

    /// <param name="options">Of the rehearsal: the garden, and that nobody presses a link, for after a break they are pressed by the plan of that moment.</param>
    private async Task KillAsync(int kills, int seed, string[] options)
    {
        using var whole = NewData();
        await using var calm = new SmtpHost();
        var watch = Stopwatch.StartNew();
        var (exit, _, errors) = await ServiceProcess.RunAsync(whole.Path, Arguments(calm, whole.Path, options));
        Assert.True(exit == 0, errors);
        var unbroken = watch.Elapsed;

        var random = new Random(seed);
        int killed = 0, interrupted = 0, resent = 0, rehearsals = 0;
        while (killed < kills)
        {
            var broken = await BreakAsync(kills - killed, unbroken, random, options);
            AssertSame(calm, broken);
            killed += broken.Kills;
            interrupted += broken.Interrupted.Count;
            resent += broken.Server.Letters.Count - calm.Letters.Count;
            rehearsals++;
            await broken.Server.DisposeAsync();
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{killed} kills of {rehearsals} rehearsals with {calm.Letters.Count} letters each, {interrupted} letters found half sent, {resent} came twice; unbroken {unbroken.TotalSeconds:F1} s, in all {watch.Elapsed.TotalSeconds:F1} s"));
        Assert.True(interrupted > 0, "no kill fell into a delivery");
    }

    /// <param name="Interrupted">Letters that were being sent when the process died; only these may come twice.</param>
    private sealed record Broken(SmtpHost Server, int Kills, HashSet<string> Interrupted);

    /// <summary>One rehearsal, killed up to so many times and then left to end.</summary>
    private static async Task<Broken> BreakAsync(int mostKills, TimeSpan unbroken, Random random, string[] options)
    {
        using var data = NewData();
        using var letterHere = new SemaphoreSlim(0);
        var server = new SmtpHost(beforeAnswer: async _ =>
        {
            letterHere.Release();
            await Task.Delay(TimeSpan.FromMilliseconds(250), TimeProvider.System);
        });
        var interrupted = new HashSet<string>();
        for (var kills = 0; ; kills++)
        {
            using var process = ServiceProcess.Start(data.Path, Arguments(server, data.Path, options));
            var end = process.EndAsync();
            if (kills < mostKills) await Task.WhenAny(end, MomentAsync(kills, letterHere, unbroken, random));
            else await end;
            if (process.HasExited)
            {
                Assert.True(await end == 0, process.Errors);
                return new(server, kills, interrupted);
            }

            process.Kill();
            await end;
            interrupted.UnionWith(Interrupted(data.Path));
            while (letterHere.Wait(0, TestContext.Current.CancellationToken))
            {
            }
        }
    }

    /// <summary>Two of three times a moment about the arrival of a letter, else any.</summary>
    private static async Task MomentAsync(int kill, SemaphoreSlim letterHere, TimeSpan unbroken, Random random)
    {
        var late = TimeSpan.FromMilliseconds(random.Next(300));
        if (kill % 3 == 2) await Task.Delay(unbroken * random.NextDouble() / 2, TimeProvider.System, TestContext.Current.CancellationToken);
        else for (var letters = random.Next(1, 4); letters > 0; letters--) await letterHere.WaitAsync(unbroken, TestContext.Current.CancellationToken);
        await Task.Delay(late, TimeProvider.System, TestContext.Current.CancellationToken);
    }

    private static void AssertSame(SmtpHost calm, Broken broken)
    {
        var expected = calm.Letters.Zip(calm.Raw).ToDictionary(letter => letter.First.MessageId!, letter => letter.Second);
        var arrived = broken.Server.Letters.Zip(broken.Server.Raw).ToLookup(letter => letter.First.MessageId!, letter => letter.Second);
        var (whole, after) = (Subjects(calm).ToList(), Subjects(broken.Server).ToList());
        Assert.True(whole.SequenceEqual(after), $"missing:\n{string.Join('\n', whole.Except(after))}\ntoo many:\n{string.Join('\n', after.Except(whole))}");
        Assert.Equal(expected.Keys.Order(), arrived.Select(letters => letters.Key).Order());
        Assert.All(arrived, letters => Assert.All(letters, letter => Assert.Equal(Unenclosed(expected[letters.Key]), Unenclosed(letter))));
        Assert.All(arrived, letters => Assert.All(letters, letter => Assert.Equal(letters.First(), letter)));
        Assert.All(arrived.Where(letters => letters.Count() > 1), letters => Assert.Contains(letters.Key, broken.Interrupted));
    }

    private static IEnumerable<string> Subjects(SmtpHost host) =>
        host.Letters.DistinctBy(letter => letter.MessageId).OrderBy(letter => letter.Date).ThenBy(letter => letter.To.ToString(), StringComparer.Ordinal).Select(letter => $"{letter.Date:u} {letter.To}: {letter.Subject}");

    private static string[] Arguments(SmtpHost server, string data, string[] options) =>
    [
        "rehearse", "--smtp", string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{server.Port}"),
        "--data", data, "--out", Path.Combine(data, "out"), "--config", ConfigFiles.Folder, .. options,
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

    /// <summary>
    /// The letter with the names of its enclosures in place of their bytes: a turn that is taken anew after a break plans anew, from what was told a moment
    /// ago, and may put a job some minutes elsewhere than an unbroken run. What the letter says is the same.
    /// </summary>
    private static string Unenclosed(string letter)
    {
        var message = MimeMessage.Load(new MemoryStream(Encoding.Latin1.GetBytes(letter)));
        foreach (var part in message.Attachments.OfType<MimePart>()) part.Content = new MimeContent(new MemoryStream(Encoding.UTF8.GetBytes(part.FileName!)));
        return message.ToString();
    }
}
