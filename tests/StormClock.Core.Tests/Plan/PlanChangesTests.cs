using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>A plan stays what it was told to be, unless there is a reason; and says where it does not (science.md 8.4).</summary>
public class PlanChangesTests
{
    private static readonly LocalDate Day = new(2027, 9, 21);

    private static Instant At(int hour, int minute = 0) => Gardens.Zone.AtStrictly(Day.At(new LocalTime(hour, minute))).ToInstant();

    private static PlanRequest Request(GardenBook book, int nowHour, int stopHour) => new(
        book, new Dictionary<string, JobState>(),
        Enum.GetValues<WorkClass>().ToDictionary(work => ("home", work), _ => new StopTimes(At(stopHour))), At(nowHour), At(nowHour) + Duration.FromDays(2));

    private static ToldPlan Told(int stopHour, params (string Id, int Hour, string People)[] jobs) => new(
        [.. jobs.Select(job => new ToldJob(job.Id, At(job.Hour), job.People.Split(' ')))],
        Enum.GetValues<WorkClass>().ToDictionary(work => work, _ => At(stopHour)));

    private static GardenBook Book(params Job[] jobs) => Gardens.With([Gardens.Person("ada"), Gardens.Person("bo")], jobs);

    [Fact]
    public void Plan_ToldToBeginSoon_KeepsItsPlaceThoughAnotherOrderIsDearer()
    {
        var request = Request(Book(Gardens.Job("cheap", 60, value: 1), Gardens.Job("dear", 60, value: 99)), 9, 17) with { Before = Told(17, ("cheap", 9, "bo"), ("dear", 10, "bo")) };
        var plan = Planner.Plan(request);
        Assert.Equal([("cheap", "bo", At(9)), ("dear", "bo", At(10))], plan.Jobs.Select(job => (job.Job.Id, job.People.Single(), job.Start)));
        Assert.Empty(plan.Changes);
    }

    [Fact]
    public void Plan_StopMovedSooner_GivesUpThePlaceAndSaysWhy()
    {
        var request = Request(Gardens.With([Gardens.Person("ada")], Gardens.Job("cheap", 60, value: 1), Gardens.Job("dear", 60, value: 99)), 9, 10) with
        {
            Before = Told(17, ("cheap", 9, "ada"), ("dear", 12, "ada")),
        };
        var plan = Planner.Plan(request);
        Assert.Equal(["dear"], plan.Jobs.Select(job => job.Job.Id));
        Assert.Equal(
            [new("cheap", PlanChangeKind.Dropped, "no time left before this work must stop"), new("dear", PlanChangeKind.Earlier, "this work must stop sooner than last told")],
            plan.Changes);
    }

    [Fact]
    public void Plan_StartedJob_ComesFirstWithWhoStartedItForWhatIsLeft()
    {
        var request = Request(Book(Gardens.Job("begun", 60, value: 1), Gardens.Job("dear", 60, value: 99)), 9, 17) with
        {
            States = new Dictionary<string, JobState> { ["begun"] = new("begun", JobProgress.Started, At(8, 30), "bo") },
        };
        var begun = Planner.Plan(request).Jobs.Single(job => job.Job.Id == "begun");
        Assert.Equal(("bo", At(9), At(9, 30)), (begun.People.Single(), begun.Start, begun.End));
    }

    [Fact]
    public void Plan_DoneNewAndGone_AreNamed()
    {
        var request = Request(Book(Gardens.Job("done", 60), Gardens.Job("new", 60)), 9, 17) with
        {
            States = new Dictionary<string, JobState> { ["done"] = new("done", JobProgress.Done, At(8), "bo") },
            Before = Told(17, ("done", 9, "ada"), ("gone", 10, "ada")),
        };
        Assert.Equal(
            [("done", PlanChangeKind.Done), ("gone", PlanChangeKind.Dropped), ("new", PlanChangeKind.New)],
            Planner.Plan(request).Changes.Select(change => (change.JobId, change.Kind)));
    }

    [Fact]
    public void Plan_ToldForTheAfternoon_IsNotMovedForNothing()
    {
        var book = Book(Gardens.Job("a", 60), Gardens.Job("b", 60));
        var plan = Planner.Plan(Request(book, 8, 17) with { Before = Told(17, ("a", 13, "ada"), ("b", 8, "bo")) });
        Assert.DoesNotContain(plan.Changes, change => change.JobId == "b");
    }
}
