using StormClock.Core.Plan;

namespace StormClock.Core.Tests.Plan;

/// <summary>Instances small enough to be reckoned by hand (science.md 8.6, vectors P1 and P2).</summary>
public class OrderSearchTests
{
    private const int SlotsOfAnHour = 12;

    /// <summary>Chance that the deadline is later than 1 to 5 hours.</summary>
    private static readonly double[] StepChances = [1, 0.95, 0.80, 0.50, 0.20, 0.05];

    /// <summary>P1: every order by enumeration.</summary>
    [Theory]
    [InlineData("ABC", 187)]
    [InlineData("ACB", 175)]
    [InlineData("BAC", 190)]
    [InlineData("BCA", 178)]
    [InlineData("CAB", 169)]
    [InlineData("CBA", 157)]
    public void Decoder_VectorP1_GivesTheValueOfEachOrder(string order, double value) =>
        Assert.Equal(value, OrderSearch.Decoded(ThreeJobs(hours => StepChances[(int)Math.Ceiling(hours)]), Order(order)).Score, 1e-6);

    /// <summary>P1: by value per minute 187; the search finds BAC, 190.</summary>
    [Fact]
    public void Search_VectorP1_FindsWhatGreedMisses()
    {
        var model = ThreeJobs(hours => StepChances[(int)Math.Ceiling(hours)]);
        Assert.Equal(187, OrderSearch.Decoded(model, FirstOrders.Of(model).First()).Score, 1e-6);
        var best = OrderSearch.Best(model);
        Assert.Equal(190, best.Score, 1e-6);
        Assert.Equal("BAC", Named(best));
    }

    /// <summary>P2: exponential deadline of 0.25 an hour; the order by v·e^(−λd)/(1−e^(−λd)) is ABC, worth 175.53.</summary>
    [Fact]
    public void Search_VectorP2_FindsTheOrderOfTheIndices()
    {
        var best = OrderSearch.Best(ThreeJobs(hours => Math.Exp(-0.25 * hours)));
        Assert.Equal(175.53, best.Score, 0.05);
        Assert.Equal("ABC", Named(best));
    }

    [Fact]
    public void Search_SameModelTwice_GivesTheSameLine()
    {
        var request = RandomGardens.Request(3, 40, 3, 20);
        var (one, two) = (OrderSearch.Best(PlanProblem.Of(request, [.. request.Book.Jobs]).Model), OrderSearch.Best(PlanProblem.Of(request, [.. request.Book.Jobs]).Model));
        Assert.Equal(one.Start, two.Start);
        Assert.Equal(one.Team, two.Team);
        Assert.Equal(one.Score, two.Score);
    }

    /// <summary>One worker; A takes one hour and is worth 100, B two hours and 160, C one hour and 60. Nothing but the deadline counts.</summary>
    private static PlanModel ThreeJobs(Func<double, double> chanceAfterHours)
    {
        const int slots = 5 * SlotsOfAnHour;
        ModelJob Job(int hours, double value) => new() { Length = hours * SlotsOfAnHour, Value = value, Teams = [0] };
        return new()
        {
            Slots = slots,
            Jobs = [Job(1, 100), Job(2, 160), Job(1, 60)],
            People = 1,
            Teams = [[0]],
            Windows = [[new(slots, [(0, slots)])]],
            Chance = [[.. Enumerable.Range(0, slots + 1).Select(slot => chanceAfterHours(slot / (double)SlotsOfAnHour))]],
            Stop = [slots],
            Travel = [[0]],
            HourCost = 0,
            AreaCost = 0,
        };
    }

    private static int[] Order(string names) => [.. names.Select(name => name - 'A')];

    private static string Named(Line line) => string.Concat(line.Order.Select(index => (char)('A' + index)));
}
