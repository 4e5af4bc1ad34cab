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
            [new("cheap", PlanChangeKind.Dropped, PlanChangeCause.LeftOut), new("dear", PlanChangeKind.Earlier, PlanChangeCause.StopsSooner)],
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

    /// <summary>What is begun or about to begin may not fit any more; the search must bear a head of the order that is left out.</summary>
    [Fact]
    public void Plan_WhatWasToBeginNoLongerFits_LeavesItOutAndPlansTheRest()
    {
        var book = Book([.. Enumerable.Range(0, 4).Select(i => Gardens.Job($"moved{i}", 30) with { StoreId = "shed", StoreFloorM2 = 1 }), Gardens.Job("long", 180), Gardens.Job("short", 20)]);
        book = book with { Stores = [new("shed", "Shed", "home", 1, null)] };
        var plan = Planner.Plan(Request(book, 9, 10) with { Before = Told(10, ("moved0", 9, "ada"), ("moved1", 9, "bo"), ("moved2", 10, "ada"), ("long", 9, "bo")) });
        Assert.Equal(["moved0", "short"], plan.Jobs.Select(job => job.Job.Id).Order());
        Assert.Equal(LeftCause.NoWindow, plan.LeftOut.Single(left => left.Job.Id == "long").Why.Cause);
        Assert.Equal(3, plan.LeftOut.Count(left => left.Why.Cause == LeftCause.StoreFull));
    }

    /// <summary>Nothing told fits: the storm is an hour away and both began with what takes longer together.</summary>
    [Fact]
    public void Search_HeadOfTheOrderIsLeftOut_StillSearchesTheRest()
    {
        var model = new PlanModel
        {
            Slots = 10,
            Jobs = [.. Enumerable.Range(0, 5).Select(i => new ModelJob { Length = i < 3 ? 20 : 4, Value = 1, Teams = [0] })],
            People = 1,
            Teams = [[0]],
            Windows = [[new(10, [(0, 10)])]],
            Chance = [[.. Enumerable.Repeat(1.0, 11)]],
            Stop = [10],
            Travel = [[0]],
            Frozen = [0, 1, 2],
        };
        Assert.Equal([-1, -1, -1, 0, 4], OrderSearch.Best(model).Start);
    }
}
