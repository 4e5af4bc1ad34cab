using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Turns jobs of the book into jobs of the model.</summary>
internal sealed class ModelJobs(PlanRequest request, PlanGrid grid, Crew crew, ModelWindows windows)
{
    private readonly List<string> sites = [.. request.Book.Sites.Select(site => site.Id)];
    private readonly List<string> areas = [.. request.Book.Areas.Select(area => area.Id)];
    private readonly List<string> stores = [.. request.Book.Stores.Select(store => store.Id)];
    private readonly IReadOnlyDictionary<string, ToldPlace> told = ToldPlaces.Of(request, crew);

    public IReadOnlyList<ModelJob> Of(IReadOnlyList<Job> jobs)
    {
        var index = jobs.Select((job, i) => (job.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
        var before = jobs.Select(job => job.After.Where(index.ContainsKey).Select(id => index[id]).Distinct().ToArray()).ToArray();
        var after = jobs.Select(_ => new List<int>()).ToArray();
        for (var i = 0; i < before.Length; i++)
        {
            foreach (var earlier in before[i]) after[earlier].Add(i);
        }

        var least = LeastValue(jobs);
        var waits = Shopping.Waits(request, jobs);
        return [.. jobs.Select((job, i) => One(job, before[i], [.. after[i]], least, waits.TryGetValue(job.Id, out var bought) ? bought : request.Now))];
    }

    /// <summary>Worth of a job, its hazard to others included, in the garden's money.</summary>
    public static double Worth(Job job)
    {
        var worth = job.Value + job.HazardToOthers;
        return double.IsFinite(worth) ? Math.Max(0, worth) : 0;
    }

    private ModelJob One(Job job, int[] before, int[] after, double leastValue, Instant supplied)
    {
        var area = request.Book.AreaOf(request.Book.ItemOf(job));
        var lane = windows.LaneOf(job);
        var teams = crew.TeamsFor(job).Select(windows.TeamIndex).ToArray();
        foreach (var team in teams) windows.Of(team, lane);
        var place = told.GetValueOrDefault(job.Id);
        return new()
        {
            Length = PlanGrid.Length(Remaining.Minutes(request, job)),
            Value = (Worth(job) * (request.WhyNot(job) == CannotWhy.NoTime ? Answered.WorthWithoutTime : 1)) + leastValue,
            Site = sites.IndexOf(area.SiteId),
            Area = areas.IndexOf(area.Id),
            Lane = lane,
            Teams = teams,
            Before = before,
            After = after,
            Supplied = grid.AtOrAfter(supplied),
            Store = job.StoreId is null ? -1 : stores.IndexOf(job.StoreId),
            FloorM2 = job.StoreFloorM2,
            VolumeM3 = job.StoreVolumeM3,
            Later = request.IsPutOff(job),
            ToldSlot = place is null ? -1 : grid.AtOrAfter(place.Start),
            ToldTeam = place is null ? -1 : teams.Where(team => windows.TeamOf(team).SequenceEqual(place.Team)).DefaultIfEmpty(-1).First(),
        };
    }

    /// <summary>Work to which nobody gave a value still counts a thousandth of the mean (C).</summary>
    private static double LeastValue(IReadOnlyList<Job> jobs)
    {
        var mean = jobs.Count == 0 ? 0 : jobs.Average(Worth);
        return mean == 0 ? 1 : mean / 1000;
    }
}
