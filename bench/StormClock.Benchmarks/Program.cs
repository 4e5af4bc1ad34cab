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

if (args is ["smtp-sink"])
{
    await SmtpSink.RunAsync();
    return;
}

if (args is ["outbox", .. var rest])
{
    await OutboxStorm.RunAsync(rest is [var count] ? int.Parse(count) : 10_000);
    return;
}

if (args is ["pages", "flood"])
{
    await PagesLoad.FloodAsync();
    return;
}

if (args is ["pages", .. var things])
{
    await PagesLoad.PrintAsync(things is [var more] ? int.Parse(more) : 0);
    return;
}

var config = DefaultConfig.Instance
    .AddDiagnoser(MemoryDiagnoser.Default)
    .AddColumn(StatisticColumn.Median, StatisticColumn.P95);
BenchmarkSwitcher.FromAssembly(typeof(WindBenchmarks).Assembly).Run(args, config);
