using BenchmarkDotNet.Attributes;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Benchmarks;

/// <summary>The plan alone, with stops from the 10,000 members of Ian, advisory 16.</summary>
public class PlanBenchmarks
{
    private static readonly Instant Now = SampleStorms.Ian16.IssuedAt;
    private readonly PlanRequest practiceSize = Request(BenchGarden.Book);
    private readonly PlanRequest large = Request(BenchGarden.Large);

    [Benchmark]
    public GardenPlan SixtyJobsTwoPeople() => Planner.Plan(practiceSize);

    [Benchmark]
    public GardenPlan ThreeHundredJobsSixPeople() => Planner.Plan(large);

    private static PlanRequest Request(GardenBook book)
    {
        var stops = new Dictionary<(string, WorkClass), StopTimes>();
        foreach (var site in book.Sites)
        {
            var limits = Enum.GetValues<WorkClass>().ToDictionary(work => work, work => ClassStops.MarineKt(WorkLimit.Defaults[work], site.Terrain));
            var members = WindOutlook.At(SampleStorms.Ian16, site.At, [.. limits.Values.Distinct().Order()]);
            foreach (var (work, kt) in limits) stops[(site.Id, work)] = new(members.Unfinished(kt, Now), members.Origin, Now, null);
        }

        return new(book, new Dictionary<string, JobState>(), stops, Now, Now + Duration.FromHours(120));
    }
}
