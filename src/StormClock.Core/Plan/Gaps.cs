namespace StormClock.Core.Plan;

/// <summary>Time that a schedule leaves free.</summary>
internal sealed class Gaps
{
    private readonly PlanModel model;
    private readonly Line line;
    private readonly List<(int From, int Until, ModelJob Job)>[] given;

    public Gaps(PlanModel model, Line line)
    {
        (this.model, this.line) = (model, line);
        given = [.. Enumerable.Range(0, model.People).Select(_ => new List<(int, int, ModelJob)>())];
        for (var i = 0; i < model.Jobs.Count; i++)
        {
            if (line.Start[i] >= 0) Give(line.Team[i], line.Start[i], model.Jobs[i].Length, model.Jobs[i]);
        }
    }

    /// <summary>Gives so many slots to a job, or says that there are none in one piece.</summary>
    public bool Take(int index, int length)
    {
        var job = model.Jobs[index];
        var ready = job.Before.Select(before => line.Start[before] + model.Jobs[before].Length).Append(job.NotBefore).Max();
        foreach (var team in job.Teams)
        {
            var windows = model.Windows[team][job.Lane]!;
            for (var start = windows.FirstStart(ready, length); start >= 0; start = windows.FirstStart(start + 1, length))
            {
                if (!model.Teams[team].All(person => IsFree(person, start, start + length, job))) continue;
                Give(team, start, length, job);
                return true;
            }
        }

        return false;
    }

    private bool IsFree(int person, int from, int until, ModelJob job) =>
        given[person].TrueForAll(busy => until + model.Way(job, busy.Job) <= busy.From || busy.Until + model.Way(busy.Job, job) <= from);

    private void Give(int team, int start, int length, ModelJob job)
    {
        foreach (var person in model.Teams[team]) given[person].Add((start, start + length, job));
    }
}
