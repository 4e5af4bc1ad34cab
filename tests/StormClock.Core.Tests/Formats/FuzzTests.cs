using System.Diagnostics;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Core.Tests.Formats;

/// <summary>Broken and hostile bytes: whatever comes, a reader answers with a value or a fault, soon, and never throws.</summary>
public class FuzzTests(ITestOutputHelper output)
{
    /// <summary>Everything that takes bytes from outside, each telling whether it found them good; a new reader gets a line here.</summary>
    private static readonly (string Name, Func<ReadOnlyMemory<byte>, bool> IsGood)[] Readers =
    [
        ("messages", bytes => MessageReader.ReadAll(bytes).IsGood),
        ("one message", bytes => MessageReader.Read(bytes).IsGood),
        ("lists", bytes => FeedIndexReader.Read(bytes).IsGood),
        ("the kind of a list", bytes => FeedIndexReader.IsList(bytes.Span)),
    ];

    [Fact]
    public void Reading_BrokenBytes_NeverThrows() => Run(seed: 1, inputs: 100_000, mostBytes: 8 * 1024, longest: null);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Reading_TwoMillionBrokenBytes_NeverThrowsNorStalls() => Run(seed: 2, inputs: 2_000_000, mostBytes: 256 * 1024, longest: TimeSpan.FromSeconds(1));

    /// <param name="longest">By the clock on the wall, so only for a run on a machine that does little else; null for none.</param>
    private void Run(int seed, int inputs, int mostBytes, TimeSpan? longest)
    {
        var breaker = new ByteBreaker(seed, Seeds(), mostBytes);
        var (slowest, good, peak) = (TimeSpan.Zero, 0, 0L);
        for (var k = 0; k < inputs; k++)
        {
            var bytes = breaker.Next();
            var begun = Stopwatch.GetTimestamp();
            var (name, isGood) = Readers[k % Readers.Length];
            try
            {
                if (isGood(bytes)) good++;
            }
            catch (Exception error)
            {
                Assert.Fail($"input {k} of seed {seed} ({bytes.Length} bytes) made the reader of {name} throw: {error}\n{Convert.ToBase64String(bytes[..Math.Min(bytes.Length, 4000)])}");
            }

            var took = Stopwatch.GetElapsedTime(begun);
            if (took > slowest) slowest = took;
            if (took > longest) Assert.Fail($"input {k} of seed {seed} ({bytes.Length} bytes) took {took.TotalSeconds:0.0} s\n{Convert.ToBase64String(bytes[..Math.Min(bytes.Length, 4000)])}");
            if (k % 1000 == 0) peak = Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false));
        }

        output.WriteLine($"{inputs} inputs, seed {seed}: none threw; slowest {slowest.TotalMilliseconds:0} ms; {good} were still good; at most {peak / 1024 / 1024} MB in use.");
        Assert.InRange(peak, 0, 1024L * 1024 * 1024);
        Assert.InRange(good, inputs / 200, inputs / 2);
    }

    /// <summary>The invented messages, and of the real ones those of each kind that are not large.</summary>
    private static List<byte[]> Seeds()
    {
        var seeds = InventedMessages.All.Select(System.Text.Encoding.UTF8.GetBytes).ToList();
        if (Shared.FindFolder("nws-text-vtec") is not null)
        {
            foreach (var folder in new[] { "nws-text-vtec", "iwxxm", "nws-api", "cap", "cap-feeds", "cap-invalid", "nhc-tcm-old-formats", "nhc-currentstorms", "nhc-tcp/al092022-ian" })
            {
                seeds.AddRange(Shared.Files(folder).Where(file => new FileInfo(file).Length < 64 * 1024).Take(20).Select(File.ReadAllBytes));
            }
        }

        return seeds;
    }
}
