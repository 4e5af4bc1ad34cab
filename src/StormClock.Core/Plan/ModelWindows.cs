using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Makes the tables of open slots by team and lane of work, from light, own hours and the stop of the lane.</summary>
internal sealed class ModelWindows(PlanRequest request, PlanGrid grid, Crew crew)
{
    private readonly LightHours light = new(request.Book);
    private readonly Dictionary<(int Person, int Lane), IReadOnlyList<(int From, int Until)>> own = [];
    private readonly Dictionary<(int Team, int Lane), WindowTable> tables = [];
    private readonly List<int[]> teams = [];
    private readonly Dictionary<string, int> teamIndex = [];
    private readonly List<(Site Site, WorkClass Class)> lanes = [];

    public int[][] Teams => [.. teams];

    public IReadOnlyList<(Site Site, WorkClass Class)> Lanes => lanes;

    /// <summary>By team and lane; null where nothing asked.</summary>
    public WindowTable?[][] Tables =>
        [.. Enumerable.Range(0, teams.Count).Select(team => Enumerable.Range(0, lanes.Count).Select(lane => tables.GetValueOrDefault((team, lane))).ToArray())];

    public int[] TeamOf(int team) => teams[team];

    public int TeamIndex(int[] people)
    {
        var key = string.Join(' ', people);
        if (teamIndex.TryGetValue(key, out var index)) return index;
        teams.Add(people);
        return teamIndex[key] = teams.Count - 1;
    }

    public int LaneOf(Job job)
    {
        var site = request.Book.SiteOf(request.Book.AreaOf(request.Book.ItemOf(job)));
        var index = lanes.FindIndex(lane => lane.Site.Id == site.Id && lane.Class == job.Class);
        if (index >= 0) return index;
        lanes.Add((site, job.Class));
        return lanes.Count - 1;
    }

    public WindowTable Of(int team, int lane)
    {
        if (tables.TryGetValue((team, lane), out var table)) return table;
        var windows = teams[team].Select(person => OwnOf(person, lane)).Aggregate(WindowTable.Overlap);
        return tables[(team, lane)] = new(grid.Slots, windows);
    }

    /// <summary>The longest window that there would be in fair weather.</summary>
    public int LongestWhenFair(int team, int lane)
    {
        var windows = teams[team].Select<int, IReadOnlyList<(int From, int Until)>>(person => Slots(Hours(person, lane))).Aggregate(WindowTable.Overlap);
        return new WindowTable(grid.Slots, windows).Longest;
    }

    private IReadOnlyList<(int From, int Until)> OwnOf(int person, int lane)
    {
        if (own.TryGetValue((person, lane), out var windows)) return windows;
        var closed = request.WeatherAt(lanes[lane].Site).Closed(lanes[lane].Class).OrderBy(hours => hours.Start).ToList();
        return own[(person, lane)] = Slots(Hours(person, lane).SelectMany(window => Without(window, closed)));
    }

    /// <summary>Light and own hours up to the stop of the lane.</summary>
    private IEnumerable<Interval> Hours(int person, int lane)
    {
        var (site, workClass) = lanes[lane];
        var stop = request.Stops.GetValueOrDefault((site.Id, workClass))?.Earliest;
        var until = Instant.Min(grid.At(grid.Slots), Instant.Min(request.Horizon, stop ?? request.Horizon));
        return WorkWindows.For(request.Book, light, crew.Hands[person], site, workClass, request.Now, until);
    }

    private List<(int From, int Until)> Slots(IEnumerable<Interval> windows) =>
        Merged(windows.Select(window => (From: grid.AtOrAfter(window.Start), Until: grid.EndedBy(window.End))));

    /// <summary>What is left of a window when hours in order are taken out of it.</summary>
    private static IEnumerable<Interval> Without(Interval window, IReadOnlyList<Interval> closed)
    {
        var from = window.Start;
        foreach (var hours in closed.Where(hours => hours.End > window.Start && hours.Start < window.End))
        {
            if (hours.Start > from) yield return new(from, hours.Start);
            from = Instant.Max(from, hours.End);
        }

        if (from < window.End) yield return new(from, window.End);
    }

    /// <summary>Hours that overlap in the book are one window; hours that only touch stay two.</summary>
    private static List<(int From, int Until)> Merged(IEnumerable<(int From, int Until)> windows)
    {
        var merged = new List<(int From, int Until)>();
        foreach (var window in windows.Where(window => window.From < window.Until).OrderBy(window => window.From))
        {
            if (merged.Count > 0 && window.From < merged[^1].Until) merged[^1] = (merged[^1].From, Math.Max(merged[^1].Until, window.Until));
            else merged.Add(window);
        }

        return merged;
    }
}
