namespace StormClock.Core.Plan;

/// <summary>
/// The chance that each planned job is done before its class of work stops: the plan played often with other durations, each time
/// over all members. A person goes on to the next job when the last one is done, but not before the time planned for it;
/// what does not get done in one window goes on in the next.
/// </summary>
internal static class ChanceDone
{
    private const int Plays = 64;

    private const ulong Seed = 0xD0_11E;

    /// <summary>By job, 0 to 1; 0 for what is not planned.</summary>
    public static double[] Of(PlanModel model, Line line)
    {
        var sums = new double[model.Jobs.Count];
        var draws = new DurationDraws(Seed);
        for (var play = 0; play < Plays; play++) Play(model, line, ref draws, sums);
        return [.. sums.Select(sum => Math.Clamp(sum / Plays, 0, 1))];
    }

    private static void Play(PlanModel model, Line line, ref DurationDraws draws, double[] sums)
    {
        var ends = new int[model.Jobs.Count];
        var free = new int[model.People];
        var last = new int[model.People];
        Array.Fill(last, -1);
        foreach (var index in line.Order)
        {
            if (line.Start[index] < 0) continue;
            var (job, team) = (model.Jobs[index], line.Team[index]);
            var start = line.Start[index];
            foreach (var before in job.Before) start = Math.Max(start, ends[before]);
            foreach (var person in model.Teams[team])
            {
                if (last[person] >= 0) start = Math.Max(start, free[person] + model.Way(model.Jobs[last[person]], job));
            }

            var end = model.Windows[team][job.Lane]!.WorkedOff(start, draws.Of(job.Length), model.Stop[job.Lane]);
            ends[index] = end;
            foreach (var person in model.Teams[team]) (free[person], last[person]) = (end, index);
            if (end < model.Chance[job.Lane].Length) sums[index] += model.Chance[job.Lane][end];
        }
    }
}
