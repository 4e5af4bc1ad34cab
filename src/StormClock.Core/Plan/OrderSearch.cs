namespace StormClock.Core.Plan;

/// <summary>
/// Looks for the order of jobs whose schedule is worth most. Climbs from a few plain orders, then on from the best, by small changes
/// that are no worse, early on also some that are a little worse, so that it does not stay in the first hollow. It stops by
/// count, never by the clock, and draws the same every time: the same request gives the same plan.
/// </summary>
internal sealed class OrderSearch
{
    /// <summary>Changes tried for a garden of up to sixty jobs; fewer for larger ones, whose changes take longer.</summary>
    private const int MostChanges = 20_000;
    private const int LeastChanges = 10_000;
    private const int ChangesTimesJobs = 1_200_000;

    /// <summary>Share of the changes that goes to the climbs from each plain order; the rest goes on from the best of them (C, by trial).</summary>
    private const double ShareOfFirstClimbs = 0.3;

    /// <summary>How much worse a change may be at first, as a share of the mean value; it falls to a hundredth of this (C, by trial).</summary>
    private const double FirstWarmth = 0.3;
    private const double SecondWarmth = 0.15;
    private const double Cooling = 0.01;

    /// <summary>With everything planned, so many changes without a better one end the search (C, by trial).</summary>
    private const int Patience = 10_000;
    private const int TidyEvery = 1_000;
    private const ulong Seed = 0x5EED_0F57_0E31;

    private readonly PlanModel model;
    private readonly Decoder decoder;
    private readonly OrderMoves moves;
    private readonly double meanValue;
    private readonly Line best;
    private Line now;
    private Line trial;

    private OrderSearch(PlanModel model)
    {
        this.model = model;
        decoder = new(model);
        moves = new(model, Seed);
        meanValue = model.MeanValue;
        (now, trial, best) = (new(model), new(model), new(model));
    }

    /// <summary>How many changes a search of so many jobs tries.</summary>
    public static int Changes(int jobs) => Math.Clamp(ChangesTimesJobs / Math.Max(1, jobs), LeastChanges, MostChanges);

    /// <summary>The best line found.</summary>
    public static Line Best(PlanModel model) => Best(model, Changes(model.Jobs.Count), FirstOrders.Of(model));

    public static Line Best(PlanModel model, int changes, IEnumerable<int[]> starts)
    {
        var search = new OrderSearch(model);
        search.Run([.. starts], changes);
        return search.best;
    }

    /// <summary>The schedule of one order as it stands.</summary>
    public static Line Decoded(PlanModel model, int[] order)
    {
        var line = new Line(model);
        order.CopyTo(line.Order, 0);
        for (var index = 0; index < order.Length; index++) line.Wish[index] = model.Jobs[index].ToldTeam;
        new Decoder(model).Decode(line, 0);
        return line;
    }

    private void Run(List<int[]> starts, int changes)
    {
        var first = (int)(changes * ShareOfFirstClimbs) / starts.Count;
        for (var i = 0; i < starts.Count; i++)
        {
            Take(Decoded(model, starts[i]));
            if (i == 0 || now.Score > best.Score) KeepAsBest();
            Climb(first, FirstWarmth);
        }

        Take(best);
        Climb(changes - (first * starts.Count), SecondWarmth);
    }

    private void Climb(int changes, double warmestShare)
    {
        var lastBetter = 0;
        for (var done = 0; done < changes; done++)
        {
            if (done % TidyEvery == TidyEvery - 1) Tidy();
            if (done - lastBetter > Patience && best.Start.AsSpan().IndexOf(-1) < 0) return;
            var warmth = warmestShare * meanValue * Math.Pow(Cooling, (double)done / changes);
            if (!TryChange(now.Score + (warmth * Math.Log(1 - moves.Share())) - 1e-9)) continue;
            if (now.Score <= best.Score) continue;
            if (now.Score > best.Score * (1 + 1e-5)) lastBetter = done;
            KeepAsBest();
        }
    }

    /// <summary>Draws a change and takes it when its score is not below a limit.</summary>
    private bool TryChange(double least)
    {
        trial.CopyChoices(now);
        var from = moves.Change(trial);
        if (from < 0) return false;
        trial.CopyStand(now, from);
        if (!decoder.Decode(trial, from, least)) return false;
        trial.CopyStands(now, from);
        (now, trial) = (trial, now);
        return true;
    }

    /// <summary>Puts the order into that of the starts, what is left out last, where that costs nothing: changes then mean more.</summary>
    private void Tidy()
    {
        trial.CopyChoices(now);
        trial.CopyStand(now, 0);
        var loose = trial.Order.AsSpan(model.Frozen.Length);
        loose.ToArray().OrderBy(index => now.Start[index] < 0 ? int.MaxValue : now.Start[index]).ToArray().CopyTo(loose);
        if (decoder.Decode(trial, 0, now.Score - 1e-9)) (now, trial) = (trial, now);
    }

    private void Take(Line line)
    {
        now.CopyChoices(line);
        now.CopyStands(line, model.Jobs.Count);
    }

    private void KeepAsBest()
    {
        best.CopyChoices(now);
        best.CopyStands(now, model.Jobs.Count);
    }
}
