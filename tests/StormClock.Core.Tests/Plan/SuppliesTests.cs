using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>Work waits for what must be bought first, and things go only where they fit.</summary>
public class SuppliesTests
{
    private static readonly LocalDate Day = new(2027, 9, 21);

    private static Instant At(int hour, int minute = 0) => Gardens.Zone.AtStrictly(Day.At(new LocalTime(hour, minute))).ToInstant();

    private static Job Tie(string id, double feet, double value) => Gardens.Job(id, 30, value: value) with { Materials = [new("rope", feet, "m")] };

    private static GardenPlan Planned(GardenBook book, ToldPlan? told = null) =>
        Planner.Plan(new(book, new Dictionary<string, JobState>(), new Dictionary<(string, WorkClass), StopTimes>(), At(9), At(19)) { Before = told });

    private static Instant Start(GardenPlan plan, string id) => plan.Jobs.Single(job => job.Job.Id == id).Start;

    /// <summary>50 m are on hand: the job worth most takes 40 of them, the other waits three hours for the shop.</summary>
    [Fact]
    public void Plan_RopeForOneJobOnHand_TheOtherWaitsForTheShop()
    {
        var book = Gardens.With([Gardens.Person("ada")], Tie("dear", 40, 90), Tie("cheap", 40, 10)) with { Supplies = [new("rope", 50, "m")] };
        var plan = Planned(book);
        Assert.Equal(At(9), Start(plan, "dear"));
        Assert.Equal(At(12), Start(plan, "cheap"));
        var short1 = Assert.Single(plan.Buy);
        Assert.Equal((80.0, 50.0, 30.0, At(12)), (short1.Need, short1.Have, short1.Missing, short1.NeededAt));
    }

    [Theory]
    [InlineData(0, 9)]
    [InlineData(6, 15)]
    public void Plan_WayToTheShop_IsTheBooks(double hours, int start) =>
        Assert.Equal(At(start), Start(Planned(Gardens.With([Gardens.Person("ada")], Tie("tie", 40, 10)) with { ShoppingHours = hours }), "tie"));

    /// <summary>The wait does not begin again with each plan: who was told at seven has been to the shop at ten.</summary>
    [Fact]
    public void Plan_ToldBefore_WaitsNoLongerThanTold()
    {
        var book = Gardens.With([Gardens.Person("ada")], Tie("tie", 40, 10));
        Assert.Equal(At(10), Start(Planned(book, new([new("tie", At(10), ["ada"])], new Dictionary<WorkClass, Instant>())), "tie"));
    }

    [Theory]
    [InlineData(1.2, 0.9, true)]
    [InlineData(1.2, 1.1, false)]
    [InlineData(null, 1.5, true)]
    public void Plan_ThingAtTheDoorOfTheStore_GoesInOnlyIfItPasses(double? depthM, double widthM, bool passes)
    {
        var move = Gardens.Job("move", 20) with { Kind = JobKind.Move, StoreId = "shed" };
        var plain = Gardens.With([Gardens.Person("ada")], move);
        var book = plain with
        {
            Items = [.. plain.Items.Select(item => item with { Written = item.Written with { WidthM = widthM, DepthM = depthM } })],
            Stores = [new("shed", "Shed", "home", null, null) { DoorM = depthM is null ? 1.6 : 1.0 }],
        };
        var plan = Planned(book);
        if (passes) Assert.Single(plan.Jobs);
        else Assert.Equal("one piece is wider than the door of the store", Assert.Single(plan.LeftOut).Why);
    }
}
