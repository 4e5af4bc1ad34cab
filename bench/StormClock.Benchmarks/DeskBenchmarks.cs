using BenchmarkDotNet.Attributes;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Benchmarks;

/// <summary>A whole decision and the plan in it, for a garden with two sites and 60 jobs.</summary>
public class DeskBenchmarks
{
    private static readonly Instant Now = SampleStorms.Ian16.IssuedAt;
    private static readonly Dictionary<string, JobState> NothingDone = [];
    private static readonly Dictionary<string, Instant> NothingSent = [];

    private readonly AdvisoryLedger ledger = AdvisoryLedger.Empty.With(SampleStorms.Ian16, Now);
    private readonly StormDesk desk = new();
    private readonly PlanRequest request = new(BenchGarden.Book, NothingDone, Stops(), Now, Now + Duration.FromHours(120));

    /// <summary>On a new advisory: members for both sites are computed.</summary>
    [Benchmark]
    public Decision DecideOnNews() => new StormDesk().Decide(ledger, BenchGarden.Book, GardenStanding.Calm(Now), NothingDone, NothingSent, Now);

    /// <summary>Again on the same advisory, as after a pressed link.</summary>
    [Benchmark]
    public Decision DecideAgain() => desk.Decide(ledger, BenchGarden.Book, GardenStanding.Calm(Now), NothingDone, NothingSent, Now);

    [Benchmark]
    public GardenPlan Plan() => Planner.Plan(request);

    private static Dictionary<(string, WorkClass), StopTimes> Stops() => BenchGarden.Book.Sites
        .SelectMany(site => Enum.GetValues<WorkClass>().Select(work => (site.Id, work)))
        .ToDictionary(key => key, key => new StopTimes(Now + Duration.FromHours(30 + 3 * (int)key.work)));
}
