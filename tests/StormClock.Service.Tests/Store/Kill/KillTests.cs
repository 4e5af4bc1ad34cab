using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using StormClock.Service.Store;
using StormClock.StoreTorture;

namespace StormClock.Service.Tests.Store.Kill;

/// <summary>A real process that writes to a real folder is killed with signal 9 at random moments, again and again.</summary>
public class KillTests(ITestOutputHelper output)
{
    /// <summary>How long the last process needed until its store was open.</summary>
    private TimeSpan startTook;

    [Fact]
    public Task Killed_FiftyTimes_LosesNothingAcknowledged() => TortureAsync(rounds: 50, seed: 5, freshEvery: 25);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public Task Killed_ThousandsOfTimes_LosesNothingAcknowledged() => TortureAsync(rounds: 3000, seed: 6, freshEvery: 25);

    /// <param name="freshEvery">A new folder after so many rounds, so that creating one is killed too and files stay small.</param>
    private async Task TortureAsync(int rounds, int seed, int freshEvery)
    {
        var random = new Random(seed);
        var watch = Stopwatch.StartNew();
        int total = 0, duringStart = 0;
        for (var round = 0; round < rounds;)
        {
            using var folder = new TempFolder();
            var before = -1;
            for (var i = 0; i < freshEvery && round < rounds; i++, round++)
            {
                var killed = await KillOnceAsync(folder.Path, random, early: round % 4 == 1);
                using var store = StormStore.Open(folder.Path);
                var last = store.Read(Workload.LastNumber);
                var known = Math.Max(before, killed.Acknowledged);
                Assert.True(last == known || last == known + 1, $"round {round}: {killed.Acknowledged} acknowledged, {before} there before, {last} found");
                Assert.Empty(store.Read(Workload.FaultsOf));
                total += last - before;
                before = last;
                if (!killed.WasOpen) duringStart++;
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rounds} kills, {duringStart} of them during start, {total} transactions, {watch.Elapsed.TotalSeconds:F1} s"));
        Assert.True(total > rounds, "the killed processes hardly wrote anything");
        Assert.True(duringStart > 0, "no process was killed while it was starting");
    }

    /// <summary>A quarter of the processes is killed at some moment of their start, the others while they write.</summary>
    private async Task<(bool WasOpen, int Acknowledged)> KillOnceAsync(string folder, Random random, bool early)
    {
        var watch = Stopwatch.StartNew();
        using var process = Start(folder);
        var said = new Lines(process.StandardOutput);
        if (early)
        {
            await Task.Delay(startTook * (0.4 + (0.6 * random.NextDouble())), TimeProvider.System);
        }
        else
        {
            await HearAsync(said, 1);
            startTook = watch.Elapsed;
            await HearAsync(said, random.Next(1, 40));
            // Not always just after an acknowledgement.
            Thread.SpinWait(random.Next(100_000));
        }

        process.Kill();
        await process.WaitForExitAsync();
        var all = await said.RestAsync();
        return (all.Count > 0, all.Where(line => line != "open").Select(line => int.Parse(line, CultureInfo.InvariantCulture)).LastOrDefault(-1));
    }

    private static async Task HearAsync(Lines said, int lines)
    {
        for (var i = 0; i < lines; i++) Assert.True(await said.NextAsync(), "the process ended by itself");
    }

    private static Process Start(string folder)
    {
        var dotnet = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));
        var start = new ProcessStartInfo(dotnet) { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var argument in new[] { Path.Combine(AppContext.BaseDirectory, "StormClock.StoreTorture.dll"), folder, "100000" }) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }

    /// <summary>The whole lines that a process has said; one broken off by its death was not said.</summary>
    private sealed class Lines(StreamReader reader)
    {
        private readonly List<string> said = [];
        private string unfinished = "";

        public async Task<bool> NextAsync()
        {
            var count = said.Count;
            while (said.Count == count)
            {
                if (!await ReadAsync()) return false;
            }

            return true;
        }

        public async Task<IReadOnlyList<string>> RestAsync()
        {
            while (await ReadAsync())
            {
            }

            return said;
        }

        private async Task<bool> ReadAsync()
        {
            var buffer = new char[4096];
            var read = await reader.ReadAsync(buffer);
            var parts = (unfinished + new string(buffer, 0, read)).Split('\n');
            said.AddRange(parts[..^1]);
            unfinished = parts[^1];
            return read > 0;
        }
    }
}
