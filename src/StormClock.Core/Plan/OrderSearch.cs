namespace StormClock.Core.Plan;

/// <summary>
/// Looks for the order of jobs whose schedule is worth most: from several starts, by small changes, of which those are kept that
/// are no worse, at first even a little worse. It stops by count, never by the clock, and draws the same every time, so that
/// the same request gives the same plan.
/// </summary>
internal sealed class OrderSearch
{
    /// <summary>Changes tried (science.md 8.2).</summary>
    public const int Evaluations = 20_000;

    private const ulong Seed = 0x5EED_0F_57_0E_31;

    private readonly PlanModel model;
    private readonly Decoder decoder;
    private readonly OrderMoves moves;
    private Line now;
    private Line trial;
    private readonly Line best;

    private OrderSearch(PlanModel model)
    {
        this.model = model;
        decoder = new(model);
        moves = new(model, Seed);
        (now, trial, best) = (new(model), new(model), new(model));
    }

    /// <summary>The best line found.</summary>
    /// <param name="from">An order to start from besides the usual ones.</param>
    public static Line Best(PlanModel model, int evaluations = Evaluations, int[]? from = null)
    {
        var search = new OrderSearch(model);
        search.Run(FirstOrders.Of(model).Concat(from is null ? [] : [from]).ToList(), evaluations);
        return search.best;
    }

    /// <summary>The schedule of one order as it stands.</summary>
    public static Line Decoded(PlanModel model, int[] order)
    {
        var line = new Line(model);
        order.CopyTo(line.Order, 0);
        new Decoder(model).Decode(line, 0);
        return line;
    }

    private void Run(List<int[]> starts, int evaluations)
    {
        var first = true;
        foreach (var order in starts)
        {
            order.CopyTo(now.Order, 0);
            Wish();
            decoder.Decode(now, 0);
            Climb(evaluations / 10, 0);
            KeepBest(first);
            first = false;
        }

        var left = evaluations - (starts.Count * (evaluations / 10));
        for (var round = 0; round < Rounds; round++)
        {
            Restore();
            Climb(left / Rounds, Warmth[round] * model.MeanValue);
            KeepBest(first: false);
        }
    }

    /// <summary>Jobs that were told to somebody start out as his.</summary>
    private void Wish()
    {
        for (var index = 0; index < model.Jobs.Count; index++) now.Wish[index] = model.Jobs[index].ToldTeam;
    }

    private const int Rounds = 4;
    private static readonly double[] Warmth = [0.5, 0.2, 0.1, 0.05];

    private void Climb(int evaluations, double warmth)
    {
        for (var done = 0; done < evaluations; done++)
        {
            trial.CopyChoices(now);
            var from = moves.Change(trial);
            if (from < 0) continue;
            var tolerance = warmth * (1 - ((double)done / evaluations));
            var least = now.Score - (tolerance * moves.Share()) - 1e-9;
            trial.CopyStand(now, from);
            if (!decoder.Decode(trial, from, least)) continue;
            trial.CopyStands(now, from);
            (now, trial) = (trial, now);
            if (warmth > 0) KeepBest(first: false);
        }
    }

    private void KeepBest(bool first)
    {
        if (!first && now.Score <= best.Score) return;
        best.CopyChoices(now);
        best.CopyStands(now, model.Jobs.Count);
    }

    private void Restore()
    {
        now.CopyChoices(best);
        now.CopyStands(best, model.Jobs.Count);
    }
}
