namespace StormClock.Core.Plan;

/// <summary>
/// The latest start of each planned job that leaves time for it and for all that must follow in nine cases of ten: the same jobs with the
/// same people in the same order, pushed together against their stops from the last one back, for stops and durations as they
/// might turn out (science.md 8.3).
/// </summary>
internal static class LatestStarts
{
    /// <summary>Each stands for as large a share of the members, from those in which work stops soonest.</summary>
    private const int Cases = 200;

    private const double Tenth = 0.1;

    private const ulong Seed = 0x57A2_7B1;

    /// <summary>By job, in slots; -1 for what is not planned. Never before the planned start.</summary>
    public static int[] Of(PlanModel model, Line line)
    {
        var jobs = model.Jobs.Count;
        var cases = Enumerable.Range(0, jobs).Select(_ => new int[Cases]).ToArray();
        var draws = new DurationDraws(Seed);
        var (lengths, latest) = (new int[jobs], new int[jobs]);
        for (var k = 0; k < Cases; k++)
        {
            for (var i = 0; i < jobs; i++) lengths[i] = draws.Of(model.Jobs[i].Length);
            Back(model, line, lengths, StopsOf(model, (k + 0.5) / Cases), latest);
            for (var i = 0; i < jobs; i++) cases[i][k] = latest[i];
        }

        // However short it might turn out, as the book has it the work ends before the hour at which nothing of its class is planned.
        Back(model, line, [.. model.Jobs.Select(job => job.Length)], model.Stop, latest);
        return [.. Enumerable.Range(0, jobs).Select(i => line.Start[i] < 0 ? -1 : Math.Max(line.Start[i], InOnePiece(model, line, i, Math.Min(latest[i], Lowest(cases[i])))))];
    }

    /// <summary>Latest starts for given lengths and stops by lane; never before the planned start; -1 for what is not planned.</summary>
    internal static void Back(PlanModel model, Line line, int[] lengths, int[] stops, int[] latest)
    {
        Array.Fill(latest, -1);
        var next = new int[model.People];
        Array.Fill(next, -1);
        for (var place = line.Order.Length - 1; place >= 0; place--)
        {
            var index = line.Order[place];
            if (line.Start[index] < 0) continue;
            var (job, team) = (model.Jobs[index], line.Team[index]);
            var by = stops[job.Lane];
            foreach (var after in job.After)
            {
                if (line.Start[after] >= 0) by = Math.Min(by, latest[after]);
            }

            foreach (var person in model.Teams[team])
            {
                if (next[person] >= 0) by = Math.Min(by, latest[next[person]] - model.Way(job, model.Jobs[next[person]]));
                next[person] = index;
            }

            // What cannot be done in time even as planned binds nothing that comes before it.
            latest[index] = Math.Max(line.Start[index], model.Windows[team][job.Lane]!.WalkedBack(by, lengths[index], model.Stop[job.Lane]));
        }
    }

    /// <summary>The last start up to a slot from which the job as the book has it is done in one window.</summary>
    private static int InOnePiece(PlanModel model, Line line, int index, int slot) =>
        model.Windows[line.Team[index]][model.Jobs[index].Lane]!.LastStart(slot + model.Jobs[index].Length, model.Jobs[index].Length);

    /// <summary>By lane: the slot by which work has stopped in such a share of the members.</summary>
    private static int[] StopsOf(PlanModel model, double share) => [.. model.Chance.Select(open => LastOpen(open, 1 - share))];

    /// <summary>The last slot at whose end work is still open with a chance; the chance never rises.</summary>
    private static int LastOpen(double[] open, double chance)
    {
        var (low, high) = (0, open.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (open[middle] >= chance) low = middle;
            else high = middle - 1;
        }

        return low;
    }

    private static int Lowest(int[] latest)
    {
        Array.Sort(latest);
        return latest[(int)(Tenth * Cases) - 1];
    }
}
