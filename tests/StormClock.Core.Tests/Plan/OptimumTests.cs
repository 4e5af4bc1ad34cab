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
        var tooLarge = 0;
        for (var number = 0; gaps.Count < Instances; number++)
        {
            var request = RandomGardens.Request(number, 6 + number % 7, 1 + number % 2, 3 + number % 5);
            var model = PlanProblem.Of(request, [.. request.Book.Jobs]).Model;
            if (model.Jobs.Count == 0) continue;
            var found = OrderSearch.Best(model).Score;
            if (ExactPlan.Score(model, found) is not { } best)
            {
                tooLarge++;
                continue;
            }

            gaps.Add(100 * (best - found) / best);
            if (gaps[^1] > 0.01) output.WriteLine($"{number}: {model.Jobs.Count} jobs, {model.People} people, gap {gaps[^1]:0.000} %");
        }

        output.WriteLine($"{gaps.Count} instances ({tooLarge} more were too large for the exact search), mean gap {gaps.Average():0.0000} %, worst {gaps.Max():0.000} %");
        Assert.True(tooLarge <= 3, $"{tooLarge} instances were too large for the exact search");
        Assert.True(gaps.Average() <= 0.5 && gaps.Max() <= 3, $"mean {gaps.Average()}, worst {gaps.Max()}");
    }

    /// <summary>
    /// What a careful person would do on paper, with the same care for hours, walks and stores: the most worth by the minute first, or
    /// the work that must stop first. Share of the value saved, over the members, of what the search saves.
    /// </summary>
    [Fact]
    public void Search_AgainstOrdersOnPaper_SavesMore()
    {
        var models = Enumerable.Range(0, 20)
            .Select(number => RandomGardens.Request(700 + number, 55, 2, 15 + (5 * (number % 6))))
            .Select(request => PlanProblem.Of(request, [.. request.Book.Jobs]).Model)
            .ToList();
        var searched = models.Sum(model => Saved(model, OrderSearch.Best(model)));
        var byWorth = models.Sum(model => Saved(model, OrderSearch.Decoded(model, FirstOrders.Of(model).ElementAt(0))));
        var byLimit = models.Sum(model => Saved(model, OrderSearch.Decoded(model, FirstOrders.Of(model).ElementAt(1))));
        var all = models.Sum(model => model.Jobs.Sum(job => job.Value));
        output.WriteLine($"saved of all that could be lost: search {searched / all:0.0 %}, by worth {byWorth / all:0.0 %}, by limit {byLimit / all:0.0 %}");
        Assert.True(searched > 1.05 * Math.Max(byWorth, byLimit), $"search {searched}, by worth {byWorth}, by limit {byLimit}");
    }

    private static double Saved(PlanModel model, Line line) =>
        model.Jobs.Select((job, i) => line.Start[i] < 0 ? 0 : job.Value * model.Chance[job.Lane][line.Start[i] + job.Length]).Sum();
}
