using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>A plan is made anew for an occasion and not for the hand of the clock (science.md 8.4).</summary>
public class KeptPlanTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 21, 13, 0);
    private static readonly GardenBook Book = Gardens.With([Gardens.Person("ada")], Gardens.Job("a", 90), Gardens.Job("b", 60, WorkClass.Sheet));
    private static readonly Dictionary<string, JobState> Open = [];
    private static readonly PlanOccasion Occasion = new(Book, "advisory 7", Open, Now + Duration.FromHours(30), true);

    private static KeptPlan Kept(Duration sheetStop) => new(
        Planner.Plan(new(Book, Open, new Dictionary<(string, WorkClass), StopTimes> { [("home", WorkClass.Sheet)] = new(Now + sheetStop) }, Now, Now + Duration.FromHours(40))), Occasion);

    private static KeptPlan Plan => Kept(Duration.FromHours(8));

    [Theory]
    [InlineData(0, true)]
    [InlineData(359, true)]
    [InlineData(360, false)]
    public void Kept_NothingHappens_HoldsForSixHours(int minutes, bool holds)
    {
        var idle = Plan with { Plan = Plan.Plan with { Jobs = [], WorkStops = new Dictionary<WorkClass, WorkStop>() } };
        Assert.Equal(holds, idle.Holds(Occasion, Now + Duration.FromMinutes(minutes)));
    }

    public static TheoryData<string, PlanOccasion> Occasions => new()
    {
        { "a new advisory", Occasion with { Standing = "advisory 8" } },
        { "another book", Occasion with { Book = Book with { Name = "Other" } } },
        { "another stop told", Occasion with { StopTold = Now } },
        { "rain alone", Occasion with { ForWind = false } },
        { "a job done", Occasion with { States = new Dictionary<string, JobState> { ["a"] = new("a", JobProgress.Done, Now, "ada") } } },
    };

    [Theory, MemberData(nameof(Occasions))]
    public void Kept_Occasion_IsMadeAnew(string what, PlanOccasion occasion) => Assert.False(Plan.Holds(occasion, Now + Duration.FromMinutes(1)), what);

    [Fact]
    public void Kept_SameStatesReadAgain_Holds() => Assert.True(Plan.Holds(Occasion with { States = new Dictionary<string, JobState>() }, Now));

    [Fact]
    public void Kept_JobShouldHaveEnded_IsMadeAnew()
    {
        var first = Plan.Plan.Jobs.Min(job => job.End);
        Assert.True(Plan.Holds(Occasion, first - Duration.FromMinutes(1)) || first - Now > Duration.FromHours(1));
        Assert.False(Plan.Holds(Occasion, first));
    }

    [Fact]
    public void Kept_LimitCrossed_IsMadeAnew()
    {
        var kept = Kept(Duration.FromMinutes(20));
        Assert.True(kept.Holds(Occasion, Now + Duration.FromMinutes(19)));
        Assert.False(kept.Holds(Occasion, Now + Duration.FromMinutes(20)));
    }
}
