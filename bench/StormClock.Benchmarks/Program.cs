using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Running;
using StormClock.Benchmarks;

if (args is ["peak", var kind])
{
    if (kind == "cap") FeedPeak.PrintCapRatio();
    else FeedPeak.Print(kind);
    return;
}

var config = DefaultConfig.Instance
    .AddDiagnoser(MemoryDiagnoser.Default)
    .AddColumn(StatisticColumn.Median, StatisticColumn.P95);
BenchmarkSwitcher.FromAssembly(typeof(WindBenchmarks).Assembly).Run(args, config);
