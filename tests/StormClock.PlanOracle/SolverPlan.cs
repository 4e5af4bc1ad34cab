using Google.OrTools.Sat;
using StormClock.Core.Plan;

namespace StormClock.PlanOracle;

/// <summary>The planning problem as a constraint model, for gardens of one area: no walks, no set-ups.</summary>
internal sealed class SolverPlan
{
    private const double Scale = 10_000;

    private readonly CpModel cp = new();
    private readonly PlanModel model;
    private readonly IntVar[] starts;
    private readonly BoolVar[] planned;

    private SolverPlan(PlanModel model)
    {
        this.model = model;
        starts = [.. model.Jobs.Select((job, i) => cp.NewIntVar(0, LastStart(job), $"start{i}"))];
        planned = [.. model.Jobs.Select((_, i) => cp.NewBoolVar($"planned{i}"))];
    }

    /// <summary>Score of the best plan found in so many seconds by so many workers, and what no plan can exceed.</summary>
    public static (double Score, double Bound) Best(PlanModel model, int seconds, int workers)
    {
        var plan = new SolverPlan(model);
        plan.State();
        var solver = new CpSolver { StringParameters = $"max_time_in_seconds:{seconds} num_workers:{workers} random_seed:7" };
        var status = solver.Solve(plan.cp);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) throw new InvalidOperationException($"The solver says {status}.");
        return (solver.ObjectiveValue / Scale, solver.BestObjectiveBound / Scale);
    }

    private int LastStart(ModelJob job) => Math.Max(0, model.Stop[job.Lane] - job.Length);

    private void State()
    {
        var busy = Enumerable.Range(0, model.People).Select(_ => new List<IntervalVar>()).ToArray();
        var worth = LinearExpr.NewBuilder();
        for (var i = 0; i < model.Jobs.Count; i++)
        {
            Teams(i, busy);
            foreach (var before in model.Jobs[i].Before)
            {
                cp.AddImplication(planned[i], planned[before]);
                cp.Add(starts[i] >= starts[before] + model.Jobs[before].Length).OnlyEnforceIf(planned[i]);
            }

            AddWorth(i, worth);
        }

        foreach (var person in busy) cp.AddNoOverlap(person);
        Stores();
        foreach (var job in planned) cp.AddHint(job, 0);
        cp.Maximize(worth);
    }

    private void Teams(int i, List<IntervalVar>[] busy)
    {
        var job = model.Jobs[i];
        var byTeam = new List<BoolVar>();
        foreach (var team in job.Teams)
        {
            var taken = cp.NewBoolVar($"job{i} team{team}");
            var windows = model.Windows[team][job.Lane]!.Windows.Where(window => window.Until - job.Length >= Math.Max(window.From, job.NotBefore)).ToList();
            if (windows.Count == 0) continue;
            var open = windows.Select(window => new long[] { Math.Max(window.From, job.NotBefore), window.Until - job.Length }).ToArray();
            cp.AddLinearExpressionInDomain(starts[i], Google.OrTools.Util.Domain.FromIntervals(open)).OnlyEnforceIf(taken);
            var interval = cp.NewOptionalFixedSizeIntervalVar(starts[i], job.Length, taken, $"interval{i} {team}");
            foreach (var person in model.Teams[team]) busy[person].Add(interval);
            byTeam.Add(taken);
        }

        cp.Add(LinearExpr.Sum(byTeam) == planned[i]);
    }

    /// <summary>The value, less what each hour and each step down of the chance takes from it.</summary>
    private void AddWorth(int i, LinearExprBuilder worth)
    {
        var job = model.Jobs[i];
        var slotCost = job.Later ? 0 : Scale * job.Value * model.HourCost * PlanGrid.SlotMinutes / 60;
        worth.AddTerm(planned[i], (long)Math.Round((Scale * job.Value) - (slotCost * job.Length)));
        worth.AddTerm(starts[i], -(long)Math.Round(slotCost));
        cp.Add(starts[i] == 0).OnlyEnforceIf(planned[i].Not());
        var chance = model.Chance[job.Lane];
        for (var end = job.Length + 1; end <= LastStart(job) + job.Length; end++)
        {
            var drop = (long)Math.Round(Scale * job.Value * (chance[end - 1] - chance[end]));
            if (drop == 0) continue;
            var late = cp.NewBoolVar($"late{i} {end}");
            cp.Add(starts[i] <= end - 1 - job.Length).OnlyEnforceIf(late.Not());
            worth.AddTerm(late, -drop);
        }
    }

    private void Stores()
    {
        for (var store = 0; store < model.FloorM2.Length; store++)
        {
            var inside = Enumerable.Range(0, model.Jobs.Count).Where(i => model.Jobs[i].Store == store).ToArray();
            Limit(inside, i => model.Jobs[i].FloorM2, model.FloorM2[store]);
            Limit(inside, i => model.Jobs[i].VolumeM3, model.VolumeM3[store]);
        }
    }

    private void Limit(int[] jobs, Func<int, double> room, double capacity)
    {
        if (double.IsInfinity(capacity)) return;
        cp.Add(LinearExpr.WeightedSum(jobs.Select(i => planned[i]), jobs.Select(i => (long)Math.Round(1e6 * room(i)))) <= (long)Math.Round(1e6 * capacity));
    }
}
