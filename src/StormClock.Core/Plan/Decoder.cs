namespace StormClock.Core.Plan;

/// <summary>
/// From an order of jobs to times: one job after the other is given the first start at which all of a team are free, have walked
/// there, and have an open window long enough. What finds none, or no room in its store, is left out, and so is what waits for it.
/// </summary>
internal sealed class Decoder(PlanModel model)
{
    private const int SoonSlots = 6 * 60 / PlanGrid.SlotMinutes;
    private const int MovedSlots = 60 / PlanGrid.SlotMinutes;

    private readonly ModelJob[] jobs = [.. model.Jobs];
    private readonly double areaCost = model.AreaCost * model.MeanValue;
    private readonly double moveCost = model.MoveCost * model.MeanValue;
    private readonly bool told = model.Told;

    /// <summary>Decodes a line from a place on; what stood there must be known. Gives up once it cannot reach a score any more.</summary>
    /// <returns>False when it gave up; the line is then of no use.</returns>
    public bool Decode(Line line, int from, double atLeast = double.NegativeInfinity)
    {
        for (var place = from; place < jobs.Length; place++)
        {
            line.CursorsAt(place).CopyTo(line.CursorsAt(place + 1));
            line.FloorAt(place).CopyTo(line.FloorAt(place + 1));
            line.VolumeAt(place).CopyTo(line.VolumeAt(place + 1));
            var index = line.Order[place];
            line.Open[place + 1] = line.Open[place] - jobs[index].Value;
            line.Scores[place + 1] = line.Scores[place] + Place(line, index, place + 1);
            if (line.Scores[place + 1] + line.Open[place + 1] < atLeast) return false;
        }

        return true;
    }

    /// <summary>Gives the job its time; what it adds to the score.</summary>
    private double Place(Line line, int index, int place)
    {
        var job = jobs[index];
        (line.Start[index], line.Team[index]) = (-1, -1);
        var ready = job.NotBefore;
        foreach (var before in job.Before)
        {
            if (line.Start[before] < 0) return 0;
            ready = Math.Max(ready, line.Start[before] + jobs[before].Length);
        }

        if (job.Store >= 0 && !line.HasRoom(job, place)) return 0;
        var cursors = line.CursorsAt(place);
        var (start, team) = (-1, line.Wish[index]);
        if (team >= 0) start = FirstStart(cursors, job, team, ready);
        if (start < 0) (start, team) = SoonestTeam(cursors, job, ready);
        if (start < 0) return 0;

        (line.Start[index], line.Team[index]) = (start, team);
        if (job.Store >= 0)
        {
            line.FloorAt(place)[job.Store] -= job.FloorM2;
            line.VolumeAt(place)[job.Store] -= job.VolumeM3;
        }

        var cost = Costs(cursors, job, start, team);
        foreach (var person in model.Teams[team]) cursors[person] = new(start + job.Length, job.Site, job.Area, Math.Max(cursors[person].Told, job.ToldSlot));
        return model.Gain(job, start + job.Length) - cost;
    }

    private (int Start, int Team) SoonestTeam(ReadOnlySpan<Cursor> cursors, ModelJob job, int ready)
    {
        var (soonest, by) = (-1, -1);
        foreach (var team in job.Teams)
        {
            var start = FirstStart(cursors, job, team, ready);
            if (start >= 0 && (soonest < 0 || start < soonest)) (soonest, by) = (start, team);
        }

        return (soonest, by);
    }

    private int FirstStart(ReadOnlySpan<Cursor> cursors, ModelJob job, int team, int ready)
    {
        foreach (var person in model.Teams[team]) ready = Math.Max(ready, cursors[person].Slot + Way(cursors[person], job));
        return model.Windows[team][job.Lane]!.FirstStart(ready, job.Length);
    }

    private int Way(Cursor from, ModelJob to) => from.Site < 0 ? 0 : model.Way(from.Site, from.Area, to);

    private double Costs(ReadOnlySpan<Cursor> cursors, ModelJob job, int start, int team)
    {
        var areas = 0;
        var reordered = false;
        foreach (var person in model.Teams[team])
        {
            if (cursors[person].Site >= 0 && cursors[person].Area != job.Area) areas++;
            reordered |= cursors[person].Told > job.ToldSlot;
        }

        var cost = areas * areaCost;
        if (told && job.ToldSlot >= 0)
        {
            var soon = job.ToldSlot < SoonSlots;
            if (Math.Abs(start - job.ToldSlot) > MovedSlots || (soon && (reordered || team != job.ToldTeam))) cost += moveCost;
        }

        return cost;
    }
}
