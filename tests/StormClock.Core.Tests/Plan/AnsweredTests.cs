using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>What the plan makes of "cannot" and its reason (product.md 6).</summary>
public class AnsweredTests
{
    private static readonly LocalDate Day = new(2027, 9, 21);
    private static readonly Person Ada = Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day, 9, 0, 17, 0));
    private static readonly Person Bo = Gardens.Person("bo", PersonRole.Helper, Gardens.Hours(Day, 9, 0, 17, 0));

    private static Instant At(int hour, int minute = 0) => Gardens.Zone.AtStrictly(Day.At(new LocalTime(hour, minute))).ToInstant();

    [Fact]
    public void Plan_NoTime_GoesBehindButStaysIn()
    {
        var book = Gardens.With([Ada], Gardens.Job("dear", 60, value: 20), Gardens.Job("cheap", 60, value: 10));
        Assert.Equal(["dear", "cheap"], Jobs(book, null, 17));
        Assert.Equal(["cheap", "dear"], Jobs(book, CannotWhy.NoTime, 17));
        // Room for one alone: the one for which nobody had time is left.
        Assert.Equal(["dear"], Jobs(book, null, 10));
        Assert.Equal(["cheap"], Jobs(book, CannotWhy.NoTime, 10));
    }

    [Fact]
    public void Plan_NoMaterial_IsLeftOutWithItsReasonAndOnTheListWhateverTheBookHas()
    {
        var tie = Gardens.Job("tie", 60) with { Materials = [new("rope_8mm", 12, "m"), new("block", 2, "each")], Fallback = "lay it down" };
        var book = Gardens.With([Ada], tie, Gardens.Job("more", 30) with { Materials = [new("rope_8mm", 4, "m")] }) with { Supplies = [new("rope_8mm", 100, "m"), new("block", 1, "each")] };
        Assert.Empty(Plan(book, "tie", null, 17).LeftOut);

        var plan = Plan(book, "tie", CannotWhy.NoMaterial, 17);
        var left = Assert.Single(plan.LeftOut);
        Assert.Equal(("tie", LeftCause.SaidNoMaterial, "ada", "lay it down", true), (left.Job.Id, left.Why.Cause, left.Why.By, left.Fallback, left.Answered));
        Assert.Equal([("block", 2.0, 2.0), ("rope_8mm", 16.0, 12.0)], plan.Buy.Select(shortage => (shortage.Material, shortage.Need, shortage.Missing)));
        Assert.Equal(["more"], plan.Jobs.Select(job => job.Job.Id));
    }

    [Fact]
    public void Plan_NeedsAPerson_IsPlannedForOneMore()
    {
        var book = Gardens.With([Ada, Bo], Gardens.Job("lift", 60));
        Assert.Single(Assert.Single(Plan(book, "lift", null, 17).Jobs).People);
        Assert.Equal(["ada", "bo"], Assert.Single(Plan(book, "lift", CannotWhy.NeedsPerson, 17).Jobs).People);
    }

    [Fact]
    public void Plan_NeedsAPersonWhereThereIsNone_SaysSo() =>
        Assert.Equal(new LeftReason(LeftCause.TooFewPeople) { People = 2 }, Assert.Single(Plan(Gardens.With([Ada], Gardens.Job("lift", 60)), "lift", CannotWhy.NeedsPerson, 17).LeftOut).Why);

    [Fact]
    public void Plan_NoReason_IsLeftOutAsSaid()
    {
        var request = Request(Gardens.With([Ada], Gardens.Job("tie", 60)), "tie", null, 17);
        var plan = Planner.Plan(request with { States = new Dictionary<string, JobState> { ["tie"] = new("tie", JobProgress.Cannot, request.Now, "ada") } });
        Assert.Empty(plan.Jobs);
        Assert.Equal(new LeftReason(LeftCause.SaidCannot) { By = "ada" }, Assert.Single(plan.LeftOut).Why);
        Assert.Empty(plan.Buy);
    }

    private static IEnumerable<string> Jobs(GardenBook book, CannotWhy? dear, int stop) => Plan(book, "dear", dear, stop).Jobs.Select(job => job.Job.Id);

    private static GardenPlan Plan(GardenBook book, string job, CannotWhy? why, int stop) => Planner.Plan(Request(book, job, why, stop));

    private static PlanRequest Request(GardenBook book, string job, CannotWhy? why, int stop) => new(
        book,
        why is null ? new Dictionary<string, JobState>() : new Dictionary<string, JobState> { [job] = new(job, JobProgress.Cannot, At(8), "ada", why) },
        book.Sites.SelectMany(site => Enum.GetValues<WorkClass>().Select(work => (site.Id, work))).ToDictionary(key => key, _ => new StopTimes(At(stop))),
        At(9), At(9) + Duration.FromDays(5));
}
