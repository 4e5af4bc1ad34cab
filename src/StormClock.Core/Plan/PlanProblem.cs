using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>A request turned into the model of the search, with the way back to jobs, people and instants.</summary>
/// <param name="Jobs">By index of the model.</param>
/// <param name="Hopeless">Reasons by job id of the jobs that are not in the model.</param>
internal sealed record PlanProblem(
    PlanModel Model, PlanGrid Grid, Crew Crew, IReadOnlyList<Job> Jobs, IReadOnlyDictionary<string, string> Hopeless)
{
    public int IndexOf(Job job) => index[job.Id];

    public IReadOnlyList<string> PeopleOf(int team) => [.. Model.Teams[team].Select(person => Crew.Hands[person].Id)];

    private readonly Dictionary<string, int> index = Jobs.Select((job, i) => (job.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);

    public static PlanProblem Of(PlanRequest request, IReadOnlyList<Job> open)
    {
        var grid = new PlanGrid(request.Now, request.Horizon, [.. request.Weather.Values.SelectMany(weather => weather.Hot)]);
        var crew = new Crew(request.Book);
        var windows = new ModelWindows(request, grid, crew);
        var hopeless = new Hopeless(request, crew, windows).Among(open);
        var jobs = open.Where(job => !hopeless.ContainsKey(job.Id)).ToList();
        var modelJobs = new ModelJobs(request, grid, crew, windows).Of(jobs);
        var ids = jobs.Select(job => job.Id).ToList();
        var model = new PlanModel
        {
            Slots = grid.Slots,
            Jobs = modelJobs,
            People = crew.Hands.Count,
            Teams = windows.Teams,
            Windows = windows.Tables,
            Stop = [.. windows.Lanes.Select(lane => StopSlot(request, grid, lane.Site, lane.Class))],
            Chance = [.. windows.Lanes.Select(lane => Chances(request, grid, lane.Site, lane.Class))],
            Travel = Travel(request.Book),
            FloorM2 = [.. request.Book.Stores.Select(store => StoreRoom.FloorM2(request, store))],
            VolumeM3 = [.. request.Book.Stores.Select(store => StoreRoom.VolumeM3(request, store))],
            Frozen = [.. ToldPlaces.Kept(request, jobs).Select(id => ids.IndexOf(id))],
        };
        LastRound.Set(model, jobs);
        return new(model, grid, crew, jobs, hopeless);
    }

    private static int StopSlot(PlanRequest request, PlanGrid grid, Site site, WorkClass workClass) =>
        request.Stops.GetValueOrDefault((site.Id, workClass))?.Earliest is { } stop ? grid.EndedBy(stop) : grid.Slots;

    private static double[] Chances(PlanRequest request, PlanGrid grid, Site site, WorkClass workClass)
    {
        var stop = request.Stops.GetValueOrDefault((site.Id, workClass));
        return [.. Enumerable.Range(0, grid.Slots + 1).Select(slot => stop?.ChanceOpenUntil(grid.At(slot)) ?? 1)];
    }

    private static int[][] Travel(GardenBook book) =>
        [.. book.Sites.Select(from => book.Sites.Select(to => from.Id == to.Id ? 0 : Way(from, to)).ToArray())];

    /// <summary>As the book has it; the way back where it has only that.</summary>
    private static int Way(Site from, Site to)
    {
        if (!from.TravelMinutes.TryGetValue(to.Id, out var minutes)) minutes = to.TravelMinutes.GetValueOrDefault(from.Id);
        return PlanGrid.Length(minutes);
    }
}
