using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Jobs that cannot be done whatever else is left, each with the reason.</summary>
internal sealed class Hopeless(PlanRequest request, Crew crew, ModelWindows windows)
{
    public const string Follower = "what must come before it does not fit";
    public const string StoreFull = "the store is full";
    private const string DoorTooNarrow = "one piece is wider than the door of the store";
    private const string NoWindow = "no window of light and own hours is long enough";
    private const string Weather = "rain or thunder is forecast for every window that is long enough";

    public IReadOnlyDictionary<string, string> Among(IReadOnlyList<Job> open)
    {
        var reasons = Circles(open);
        foreach (var job in open)
        {
            if (!reasons.ContainsKey(job.Id) && Why(job) is { } why) reasons[job.Id] = why;
        }

        for (var more = true; more;)
        {
            more = false;
            foreach (var job in open)
            {
                if (reasons.ContainsKey(job.Id) || !job.After.Any(reasons.ContainsKey)) continue;
                reasons[job.Id] = Follower;
                more = true;
            }
        }

        return reasons;
    }

    private string? Why(Job job)
    {
        if (request.StopOf(job) <= request.Now) return "this work must already have stopped";
        var teams = crew.TeamsFor(job);
        if (teams.Count == 0) return crew.WhyNobody(job);
        var length = PlanGrid.Length(Remaining.Minutes(request, job));
        var lane = windows.LaneOf(job);
        if (!teams.Any(team => windows.Of(windows.TeamIndex(team), lane).Longest >= length))
        {
            return teams.Any(team => windows.LongestWhenFair(windows.TeamIndex(team), lane) >= length) ? Weather : NoWindow;
        }

        if (!StoreRoom.Passes(request, job)) return DoorTooNarrow;
        return StoreRoom.Holds(request, job) ? null : StoreFull;
    }

    /// <summary>Jobs that wait for each other in a circle.</summary>
    private static Dictionary<string, string> Circles(IReadOnlyList<Job> open)
    {
        var byId = open.DistinctBy(job => job.Id).ToDictionary(job => job.Id);
        var reasons = new Dictionary<string, string>();
        foreach (var job in byId.Values)
        {
            if (Circle(job, byId) is { } circle) reasons[job.Id] = $"it waits for itself: {string.Join(" waits for ", circle)}";
        }

        return reasons;
    }

    /// <summary>The shortest way from the job back to itself; null when there is none.</summary>
    private static List<string>? Circle(Job job, Dictionary<string, Job> byId)
    {
        var came = new Dictionary<string, string>();
        var next = new Queue<string>([job.Id]);
        while (next.TryDequeue(out var id))
        {
            foreach (var before in byId[id].After.Where(byId.ContainsKey))
            {
                if (before == job.Id) return Way(job.Id, id, came);
                if (came.TryAdd(before, id)) next.Enqueue(before);
            }
        }

        return null;
    }

    private static List<string> Way(string job, string last, Dictionary<string, string> came)
    {
        var way = new List<string> { job };
        for (var id = last; id != job; id = came[id]) way.Add(id);
        way.Add(job);
        way.Reverse();
        return way;
    }
}
