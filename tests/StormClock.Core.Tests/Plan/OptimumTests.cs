using StormClock.Core.Plan;
using StormClock.Core.Tests.Oracles;

namespace StormClock.Core.Tests.Plan;

/// <summary>The planner against the best there is.</summary>
public class OptimumTests(ITestOutputHelper output)
{
    private const int Instances = 200;

    /// <summary>Up to twelve jobs, one or two people; gap to the optimum in per cent: 0.5 on average, 3 at worst.</summary>
    [Fact]
    public void Search_SmallGardens_IsCloseToTheOptimum()
    {
        var gaps = new List<double>();
        for (var number = 0; number < Instances; number++)
        {
            var request = RandomGardens.Request(number, 6 + number % 7, 1 + number % 2, 3 + number % 5);
            var model = PlanProblem.Of(request, [.. request.Book.Jobs]).Model;
            if (model.Jobs.Count == 0) continue;
            var found = OrderSearch.Best(model).Score;
            if (ExactPlan.Score(model, found) is not { } best) { output.WriteLine($"{number}: too large, {model.Jobs.Count} jobs"); continue; }
            gaps.Add(100 * (best - found) / best);
            if (gaps[^1] > 0.01) output.WriteLine($"{number}: {model.Jobs.Count} jobs, {model.People} people, gap {gaps[^1]:0.000} %");
        }

        output.WriteLine($"{gaps.Count} instances, mean gap {gaps.Average():0.0000} %, worst {gaps.Max():0.000} %");
        Assert.True(gaps.Average() <= 0.5 && gaps.Max() <= 3, $"mean {gaps.Average()}, worst {gaps.Max()}");
    }
}
