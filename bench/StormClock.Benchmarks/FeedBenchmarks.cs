using System.Text;
using System.Xml;
using BenchmarkDotNet.Attributes;
using StormClock.Core.Formats;
using StormClock.Core.Garden;

namespace StormClock.Benchmarks;

/// <summary>A day's alerts of a whole country: from bytes to which of a thousand gardens each concerns.</summary>
public class FeedBenchmarks
{
    private static readonly byte[] Atom = NationalAlerts.Atom();
    private static readonly byte[] Features = NationalAlerts.Features();
    private static readonly IReadOnlyList<Site> Gardens = NationalAlerts.Gardens();

    [Benchmark]
    public int AtomToGardens() => NationalAlerts.ToGardens(Atom, Gardens);

    [Benchmark]
    public int FeaturesToGardens() => NationalAlerts.ToGardens(Features, Gardens);

    [Benchmark]
    public int AtomToMessages() => NationalAlerts.Messages(Atom).Count();

    [Benchmark]
    public int FeaturesToMessages() => NationalAlerts.Messages(Features).Count();
}

/// <summary>Reading alerts one by one against merely passing over the same bytes with a bare reader of XML.</summary>
public class CapBenchmarks
{
    private static readonly byte[][] Alerts = [.. Enumerable.Range(0, 100).Select(i => Encoding.UTF8.GetBytes(NationalAlerts.Cap(i)))];

    [Benchmark]
    public int Read() => Alerts.Sum(alert => MessageReader.Read(alert).Value!.Title.Length);

    [Benchmark(Baseline = true)]
    public int BareXmlReader()
    {
        var nodes = 0;
        foreach (var alert in Alerts)
        {
            using var reader = XmlReader.Create(new MemoryStream(alert, writable: false), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
            while (reader.Read()) nodes++;
        }

        return nodes;
    }
}
