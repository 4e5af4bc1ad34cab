using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>What does not fit is named with its reason, and bad input gives reasons too, never an exception.</summary>
public class PlannerReasonsTests
{
    private static readonly LocalDate Day = new(2027, 9, 21);
    private static readonly Person Ada = Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day, 9, 0, 17, 0));
    private static readonly Person Bo = Gardens.Person("bo", PersonRole.Helper, Gardens.Hours(Day, 9, 0, 17, 0));

    private static Instant At(int hour, int minute = 0) => Gardens.Zone.AtStrictly(Day.At(new LocalTime(hour, minute))).ToInstant();

    private static GardenPlan Plan(GardenBook book, Instant? stop = null, int nowHour = 8) => Planner.Plan(Request(book, stop ?? At(17), nowHour));

    private static PlanRequest Request(GardenBook book, Instant stop, int nowHour = 8) => new(
        book, new Dictionary<string, JobState>(),
        book.Sites.SelectMany(site => Enum.GetValues<WorkClass>().Select(work => (site.Id, work))).ToDictionary(key => key, _ => new StopTimes(stop)),
        At(nowHour), At(nowHour) + Duration.FromDays(5));

    private static LeftReason Why(GardenPlan plan, string id) => plan.LeftOut.Single(left => left.Job.Id == id).Why;

    private static GardenBook Heavy(double massKg, int people, params Person[] crew)
    {
        var book = Gardens.With(crew, Gardens.Job("move", 30, WorkClass.Carry, people) with { Kind = JobKind.Move });
        return book with { Items = [book.Items[0] with { Build = ItemBuild.Unknown with { MassKg = massKg } }, book.Items[1]] };
    }

    /// <summary>What is cheaper is work outside too: with no light left at all it is not offered; where there is some, it may fit.</summary>
    [Theory]
    [InlineData(20, 600, null)]
    [InlineData(8, 600, "lay it down")]
    public void Plan_NoWindowForTheWork_OffersTheCheapThingOnlyInOne(int nowHour, int minutes, string? fallback)
    {
        var book = Gardens.With([Ada], Gardens.Job("tie", minutes) with { Fallback = "lay it down" });
        var left = Assert.Single(Plan(book, At(23), nowHour).LeftOut);
        Assert.Equal((LeftCause.NoWindow, fallback), (left.Why.Cause, left.Fallback));
    }

    /// <summary>Everybody lifts 20 kg; two lift two thirds of 40 (UK HSE, M).</summary>
    [Theory]
    [InlineData(20, 1, "ada")]
    [InlineData(26, 2, "ada bo")]
    [InlineData(26, 1, "ada bo")]
    public void Plan_PieceThatCanBeLifted_GoesToThoseWhoCan(double massKg, int people, string who) =>
        Assert.Equal(who, string.Join(' ', Plan(Heavy(massKg, people, Ada, Bo)).Jobs.Single().People));

    [Theory]
    [InlineData(46, 1)]
    [InlineData(46, 2)]
    public void Plan_PieceTooHeavyForEverybody_SaysHowHeavy(double massKg, int people) =>
        Assert.Equal(new LeftReason(LeftCause.TooHeavy) { MassKg = massKg }, Why(Plan(Heavy(massKg, people, Ada, Bo)), "move"));

    [Fact]
    public void Plan_PieceTooHeavyForOneAlone_IsNotGivenToOne() =>
        Assert.Equal(new LeftReason(LeftCause.TooHeavy) { MassKg = 26 }, Why(Plan(Heavy(26, 1, Ada)), "move"));

    [Fact]
    public void Plan_LadderWorkForOneWhoMustNot_IsLeftOut() =>
        Assert.Equal(
            LeftCause.NobodyClimbsAlone,
            Why(Plan(Gardens.With([Ada with { LadderAlone = false }, Bo with { NoLadder = true }], Gardens.Job("high", 30, WorkClass.Ladder))), "high"));

    [Fact]
    public void Plan_CircularOrder_NamesTheCircleAndPlansTheRest()
    {
        var plan = Plan(Gardens.With([Ada], Gardens.Job("a", 30, after: "b"), Gardens.Job("b", 30, after: "a"), Gardens.Job("c", 30, after: "a"), Gardens.Job("d", 30), Gardens.Job("e", 30, after: "e")));
        Assert.Equal(["d"], plan.Jobs.Select(job => job.Job.Id));
        Assert.Equal((LeftCause.Circle, "a b a"), (Why(plan, "a").Cause, string.Join(' ', Why(plan, "a").Circle)));
        Assert.Equal(LeftCause.FollowsLeftOut, Why(plan, "c").Cause);
        Assert.Equal("e e", string.Join(' ', Why(plan, "e").Circle));
    }

    [Fact]
    public void Plan_JobLongerThanAnyWindow_SaysSo() =>
        Assert.Equal(LeftCause.NoWindow, Why(Plan(Gardens.With([Ada], Gardens.Job("long", 600))), "long").Cause);

    [Fact]
    public void Plan_NobodyInTheBook_SaysSo() =>
        Assert.Equal(LeftCause.Nobody, Why(Plan(Gardens.With([Ada with { Role = PersonRole.Keeper }], Gardens.Job("tie", 30))), "tie").Cause);

    [Fact]
    public void Plan_StormIsHere_LeavesEverythingOutAndKeepsTheStops()
    {
        var plan = Plan(Gardens.With([Ada], Gardens.Job("tie", 30), Gardens.Job("tie2", 30, after: "tie")), stop: At(7));
        Assert.Empty(plan.Jobs);
        Assert.All(plan.LeftOut, left => Assert.Equal(LeftCause.Stopped, left.Why.Cause));
        Assert.Equal(At(7), plan.WorkStops[WorkClass.Ground].Earliest);
    }

    [Fact]
    public void Plan_NoMembersAtAll_PlansAsIfNothingStopped()
    {
        var book = Gardens.With([Ada], Gardens.Job("tie", 30));
        var members = MemberTimes.Of([], [], 0);
        var plan = Planner.Plan(Request(book, At(17)) with { Stops = new Dictionary<(string, WorkClass), StopTimes> { [("home", WorkClass.Ground)] = new(members, At(8), At(8), null) } });
        Assert.Single(plan.Jobs);
        Assert.Null(plan.WorkStops[WorkClass.Ground].Earliest);
    }

    [Fact]
    public void Plan_NoJobs_IsEmpty() => Assert.Empty(Plan(Gardens.With([Ada])).Jobs);

    [Fact]
    public void Plan_HorizonBeforeNow_LeavesEverythingOut()
    {
        var request = Request(Gardens.With([Ada], Gardens.Job("tie", 30)), At(17)) with { Horizon = At(7) };
        Assert.Equal(LeftCause.Stopped, Why(Planner.Plan(request), "tie").Cause);
    }

    [Fact]
    public void Plan_StoreTooSmallForAll_TakesTheDearerAndNamesTheOther()
    {
        var book = Gardens.With(
            [Ada],
            Gardens.Job("cheap", 30, value: 5) with { StoreId = "shed", StoreFloorM2 = 2 },
            Gardens.Job("dear", 30, value: 50) with { StoreId = "shed", StoreFloorM2 = 2 },
            Gardens.Job("huge", 30, value: 500) with { StoreId = "shed", StoreVolumeM3 = 9 }) with
        { Stores = [new("shed", "Shed", "home", 3, 8)] };
        var plan = Plan(book);
        Assert.Equal(["dear"], plan.Jobs.Select(job => job.Job.Id));
        Assert.Equal(LeftCause.StoreFull, Why(plan, "cheap").Cause);
        Assert.Equal(LeftCause.StoreFull, Why(plan, "huge").Cause);
        var shed = plan.Stores.Single();
        Assert.Equal(["dear"], shed.Jobs);
        Assert.Equal(["huge", "cheap"], shed.LeftOut);
        Assert.Equal(1, shed.FreeM2);
    }

    [Fact]
    public void Plan_ThingsAlreadyMoved_TakeTheirRoomInTheStore()
    {
        var book = Gardens.With(
            [Ada],
            Gardens.Job("first", 30) with { StoreId = "shed", StoreFloorM2 = 2 },
            Gardens.Job("second", 30) with { StoreId = "shed", StoreFloorM2 = 2 }) with
        { Stores = [new("shed", "Shed", "home", 3, null)] };
        var plan = Planner.Plan(Request(book, At(17)) with { States = new Dictionary<string, JobState> { ["first"] = new("first", JobProgress.Done, At(7), "ada") } });
        Assert.Equal(LeftCause.StoreFull, Why(plan, "second").Cause);
        Assert.Equal(2, plan.Stores.Single().UsedM2);
    }

    /// <summary>Nine pots of ten minutes each, and forty minutes left beside what is worth more.</summary>
    [Fact]
    public void Plan_SomeOfManyPiecesFit_SaysHowMany()
    {
        var book = Gardens.With([Ada], Gardens.Job("pots", 90, value: 1), Gardens.Job("shed", 80, value: 100) with { ItemId = "far-item" });
        book = book with { Items = [book.Items[0] with { Count = 9 }, book.Items[1] with { AreaId = "bed" }] };
        Assert.Equal(new LeftReason(LeftCause.NoTimeForAll) { Pieces = 4, AllPieces = 9 }, Why(Plan(book, stop: At(11)), "pots"));
    }

    [Fact]
    public void Plan_NotEnoughTime_KeepsWhatEndangersOthers()
    {
        var plan = Plan(Gardens.With([Ada], Gardens.Job("dear", 60, value: 80), Gardens.Job("loose", 60, value: 20) with { HazardToOthers = 90 }), stop: At(10));
        Assert.Equal(["loose"], plan.Jobs.Select(job => job.Job.Id));
    }

    [Fact]
    public void Plan_MaterialIsShort_SaysWhenItIsNeededFirst()
    {
        var cord = new MaterialNeed("cord", 3, "m");
        var book = Gardens.With([Ada], Gardens.Job("first", 60, value: 90), Gardens.Job("second", 30) with { Materials = [cord] }, Gardens.Job("third", 30, value: 1) with { Materials = [cord] });
        var shortage = Assert.Single(Plan(book).Buy);
        // Three hours for the way to the shop; the plan is made at eight.
        Assert.Equal((6.0, At(11)), (shortage.Missing, shortage.NeededAt!.Value));
    }
}
