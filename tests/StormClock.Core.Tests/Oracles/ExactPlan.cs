using StormClock.Core.Plan;

namespace StormClock.Core.Tests.Oracles;

/// <summary>
/// The best schedule there is, for small models: jobs are appended in the order of their starts by every team, and a partial schedule is
/// given up when another with the same jobs, last places and no later hours is worth as much, or when even the best rest could not
/// reach what is known. For one person this is dynamic programming over the subsets of jobs. Shares the model with the planner, and nothing of its search.
/// </summary>
internal sealed class ExactPlan
{
    private readonly PlanModel model;
    private readonly ModelJob[] jobs;
    private readonly int[] byDensity;
    private readonly int[][] openAfter;
    private readonly Dictionary<(int Mask, int LastA, int LastB), List<Partial>> seen = [];
    private double best;

    private ExactPlan(PlanModel model, double known)
    {
        this.model = model;
        jobs = [.. model.Jobs];
        best = known;
        byDensity = [.. Enumerable.Range(0, jobs.Length).OrderByDescending(i => jobs[i].Value / Work(jobs[i]))];
        openAfter = [.. Enumerable.Range(0, model.People).Select(OpenAfter)];
    }

    /// <summary>Partial schedules that may be looked at before the search gives up.</summary>
    private const int MostPartials = 6_000_000;

    private int looked;

    /// <summary>The highest score of any schedule, or the known one when none is better; null when the instance is too large.</summary>
    public static double? Score(PlanModel model, double known)
    {
        var exact = new ExactPlan(model, known);
        var places = new Place[model.People];
        Array.Fill(places, new(0, -1));
        exact.Extend(new(0, places, new int[model.Jobs.Count], 0, 0));
        return exact.looked > MostPartials ? null : exact.best;
    }

    private readonly record struct Place(int Slot, int Last);

    private sealed record Partial(int Mask, Place[] Places, int[] Ends, int LastStart, double Score);

    private int Work(ModelJob job) => job.Length * model.Teams[job.Teams[0]].Length;

    private void Extend(Partial partial)
    {
        if (++looked > MostPartials) return;
        best = Math.Max(best, partial.Score);
        if (Bound(partial) <= best + 1e-9 || Dominated(partial)) return;
        for (var i = 0; i < jobs.Length; i++)
        {
            if ((partial.Mask >> i & 1) != 0 || jobs[i].Before.Any(before => (partial.Mask >> before & 1) == 0) || !HasRoom(partial.Mask, jobs[i])) continue;
            foreach (var team in jobs[i].Teams)
            {
                if (Append(partial, i, model.Teams[team], model.Windows[team][jobs[i].Lane]!.Windows) is { } longer) Extend(longer);
            }
        }
    }

    private Partial? Append(Partial partial, int index, int[] team, IReadOnlyList<(int From, int Until)> windows)
    {
        var job = jobs[index];
        var ready = Math.Max(job.NotBefore, job.Before.Select(before => partial.Ends[before]).DefaultIfEmpty(0).Max());
        var areas = 0;
        foreach (var person in team)
        {
            var (slot, last) = partial.Places[person];
            ready = Math.Max(ready, slot + (last < 0 ? 0 : Between(jobs[last], job)));
            if (last >= 0 && jobs[last].Area != job.Area) areas++;
        }

        foreach (var (from, until) in windows)
        {
            var start = Math.Max(ready, from);
            if (start + job.Length > until) continue;
            if (start < partial.LastStart) return null;
            var (places, ends) = ((Place[])partial.Places.Clone(), (int[])partial.Ends.Clone());
            foreach (var person in team) places[person] = new(start + job.Length, index);
            ends[index] = start + job.Length;
            var hours = job.Later ? 0 : (start + job.Length) / 12.0;
            var gain = job.Value * (model.Chance[job.Lane][start + job.Length] - (model.HourCost * hours));
            return new(partial.Mask | 1 << index, places, ends, start, partial.Score + gain - (areas * model.AreaCost * model.MeanValue));
        }

        return null;
    }

    private int Between(ModelJob from, ModelJob to) =>
        from.Area == to.Area ? 0 : from.Site == to.Site ? model.SetUp : model.Travel[from.Site][to.Site];

    private bool HasRoom(int mask, ModelJob job)
    {
        if (job.Store < 0) return true;
        var inside = jobs.Where((other, i) => (mask >> i & 1) != 0 && other.Store == job.Store).ToList();
        return inside.Sum(other => other.FloorM2) + job.FloorM2 <= model.FloorM2[job.Store] + 1e-9
            && inside.Sum(other => other.VolumeM3) + job.VolumeM3 <= model.VolumeM3[job.Store] + 1e-9;
    }

    /// <summary>The rest by value per slot until the open hours of all people are used up, each job at the chance of its soonest end.</summary>
    private double Bound(Partial partial)
    {
        var room = 0;
        for (var person = 0; person < partial.Places.Length; person++) room += openAfter[person][partial.Places[person].Slot];
        var soonest = partial.Places.Min(place => place.Slot);
        var bound = partial.Score;
        foreach (var i in byDensity)
        {
            if ((partial.Mask >> i & 1) != 0) continue;
            var end = Math.Max(Math.Max(soonest, partial.LastStart), jobs[i].NotBefore) + jobs[i].Length;
            if (end > model.Stop[jobs[i].Lane]) continue;
            var share = Math.Min(1, (double)room / Work(jobs[i]));
            bound += share * jobs[i].Value * model.Chance[jobs[i].Lane][end];
            room -= Work(jobs[i]);
            if (room <= 0) break;
        }

        return bound;
    }

    private bool Dominated(Partial partial)
    {
        var key = (partial.Mask, partial.Places[0].Last, partial.Places.Length > 1 ? partial.Places[1].Last : -1);
        if (!seen.TryGetValue(key, out var known)) seen[key] = known = [];
        if (known.Exists(other => NoWorse(other, partial))) return true;
        known.RemoveAll(other => NoWorse(partial, other));
        known.Add(partial);
        return false;
    }

    private bool NoWorse(Partial a, Partial b)
    {
        if (a.Score < b.Score || a.LastStart > b.LastStart) return false;
        for (var person = 0; person < a.Places.Length; person++)
        {
            if (a.Places[person].Slot > b.Places[person].Slot) return false;
        }

        for (var i = 0; i < jobs.Length; i++)
        {
            if (a.Ends[i] > b.Ends[i] && jobs[i].After.Any(after => (a.Mask >> after & 1) == 0)) return false;
        }

        return true;
    }

    /// <summary>Slots from each on in which a person could do work of some kind.</summary>
    private int[] OpenAfter(int person)
    {
        var open = new bool[model.Slots];
        for (var team = 0; team < model.Teams.Length; team++)
        {
            if (!model.Teams[team].Contains(person)) continue;
            foreach (var (from, until) in model.Windows[team].Where(table => table is not null).SelectMany(table => table!.Windows)) Array.Fill(open, true, from, until - from);
        }

        var after = new int[model.Slots + 1];
        for (var slot = model.Slots - 1; slot >= 0; slot--) after[slot] = after[slot + 1] + (open[slot] ? 1 : 0);
        return after;
    }
}
