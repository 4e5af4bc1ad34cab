namespace StormClock.Core.Plan;

/// <summary>
/// The latest start of each planned job that leaves time for it and for all that must follow: the same jobs with the same people in
/// the same order, pushed together against their stops from the last one back (science.md 8.3).
/// </summary>
internal static class LatestStarts
{
    /// <summary>By job, in slots; -1 for what is not planned. Never before the planned start.</summary>
    public static int[] Of(PlanModel model, Line line)
    {
        var latest = new int[model.Jobs.Count];
        Array.Fill(latest, -1);
        var next = new int[model.People];
        Array.Fill(next, -1);
        for (var place = line.Order.Length - 1; place >= 0; place--)
        {
            var index = line.Order[place];
            if (line.Start[index] < 0) continue;
            var (job, team) = (model.Jobs[index], line.Team[index]);
            var by = model.Stop[job.Lane];
            foreach (var after in job.After)
            {
                if (latest[after] >= 0) by = Math.Min(by, latest[after]);
            }

            foreach (var person in model.Teams[team])
            {
                if (next[person] >= 0) by = Math.Min(by, latest[next[person]] - model.Way(job, model.Jobs[next[person]]));
                next[person] = index;
            }

            latest[index] = Math.Max(line.Start[index], model.Windows[team][job.Lane]!.LastStart(by, job.Length));
        }

        return latest;
    }
}
