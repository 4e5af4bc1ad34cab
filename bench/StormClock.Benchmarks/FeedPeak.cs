using System.Diagnostics;

namespace StormClock.Benchmarks;

/// <summary>What BenchmarkDotNet does not measure: the highest memory for one list of a whole country in a fresh process, and processor time alone.</summary>
internal static class FeedPeak
{
    private const int Rounds = 12;

    /// <param name="kind"><c>atom</c>, or anything else for features.</param>
    public static void Print(string kind)
    {
        var list = kind == "atom" ? NationalAlerts.Atom() : NationalAlerts.Features();
        var gardens = NationalAlerts.Gardens();
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        var before = PeakMb(reset: true);
        var least = double.MaxValue;
        for (var round = 1; round <= Rounds; round++)
        {
            var (cpu, allocated) = (Environment.CpuUsage.TotalTime, GC.GetTotalAllocatedBytes());
            var watch = Stopwatch.StartNew();
            var matches = NationalAlerts.ToGardens(list, gardens);
            var used = (Environment.CpuUsage.TotalTime - cpu).TotalMilliseconds;
            least = Math.Min(least, used);
            Console.WriteLine(
                $"{kind}, {list.Length / 1e6:0.0} MB, round {round}: {watch.ElapsedMilliseconds} ms, {used:0} ms of CPU (least so far {least:0}), "
                + $"{matches} matches, {(GC.GetTotalAllocatedBytes() - allocated) / 1e6:0} MB allocated, peak +{PeakMb(reset: false) - before:0} MB");
        }
    }

    /// <summary>The least processor time of many short rounds: on a busy machine the only fair way to set the two side by side.</summary>
    public static void PrintCapRatio()
    {
        var cap = new CapBenchmarks();
        var (read, bare) = (double.MaxValue, double.MaxValue);
        for (var round = 0; round < 400; round++)
        {
            read = Math.Min(read, CpuMs(cap.Read));
            bare = Math.Min(bare, CpuMs(cap.BareXmlReader));
        }

        Console.WriteLine($"100 alerts: read {read:0.00} ms of CPU, bare reader {bare:0.00} ms, ratio {read / bare:0.00}");
    }

    private static double CpuMs(Func<int> work)
    {
        var before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
    }

    /// <summary>Highest resident memory of this process since the last reset, as Linux counts it.</summary>
    private static double PeakMb(bool reset)
    {
        if (reset) File.WriteAllText("/proc/self/clear_refs", "5");
        var line = File.ReadLines("/proc/self/status").First(one => one.StartsWith("VmHWM", StringComparison.Ordinal));
        return double.Parse(line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[1]) / 1024;
    }
}
