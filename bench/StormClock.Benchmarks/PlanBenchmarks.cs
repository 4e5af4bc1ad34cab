using BenchmarkDotNet.Attributes;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Tests.Plan;

namespace StormClock.Benchmarks;

/// <summary>The plan alone, with stops from the 10,000 members of Ian, advisory 16.</summary>
public class PlanBenchmarks
{
    private static readonly Instant Now = SampleStorms.Ian16.IssuedAt;
    private readonly PlanRequest practiceSize = Request(BenchGarden.Book);
    private readonly PlanRequest large = Request(BenchGarden.Large);
    private readonly PlanRequest pressed = RandomGardens.Request(7, 55, 2, 20);
    private readonly PlanRequest pressedLarge = RandomGardens.Request(7, 300, 6, 40);

    [Benchmark]
    public GardenPlan SixtyJobsTwoPeople() => Planner.Plan(practiceSize);

    [Benchmark]
    public GardenPlan ThreeHundredJobsSixPeople() => Planner.Plan(large);

    /// <summary>Random gardens in which half of the work does not fit: the search goes on to its last change, and the last round is widened.</summary>
    [Benchmark]
    public GardenPlan FiftyFiveJobsHalfOfThemTooMany() => Planner.Plan(pressed);

    [Benchmark]
    public GardenPlan ThreeHundredJobsHalfOfThemTooMany() => Planner.Plan(pressedLarge);

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
