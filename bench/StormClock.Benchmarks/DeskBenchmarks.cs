using BenchmarkDotNet.Attributes;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Benchmarks;

/// <summary>A whole decision, with the plan in it, for a garden with two sites and 60 jobs.</summary>
public class DeskBenchmarks
{
    private static readonly Instant Now = SampleStorms.Ian16.IssuedAt;
    private static readonly Dictionary<string, JobState> NothingDone = [];
    private static readonly Dictionary<string, Instant> NothingSent = [];

    private readonly AdvisoryLedger ledger = AdvisoryLedger.Empty.With(SampleStorms.Ian16, Now);
    private readonly StormDesk desk = new();

    /// <summary>On a new advisory: members for both sites are computed.</summary>
    [Benchmark]
    public Decision DecideOnNews() => new StormDesk().Decide(ledger, BenchGarden.Book, GardenStanding.Calm(Now), NothingDone, NothingSent, Now);

    /// <summary>Again on the same advisory, as after a pressed link.</summary>
    [Benchmark]
    public Decision DecideAgain() => desk.Decide(ledger, BenchGarden.Book, GardenStanding.Calm(Now), NothingDone, NothingSent, Now);
}
