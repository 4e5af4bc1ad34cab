using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Jobs that cannot be done whatever else is left, each with the reason.</summary>
internal sealed class Hopeless(PlanRequest request, Crew crew, ModelWindows windows)
{
    public IReadOnlyDictionary<string, LeftReason> Among(IReadOnlyList<Job> open)
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
                reasons[job.Id] = LeftCause.FollowsLeftOut;
                more = true;
            }
        }

        return reasons;
    }

    private LeftReason? Why(Job job)
    {
        if (request.StopOf(job) <= request.Now) return LeftCause.Stopped;
        var teams = crew.TeamsFor(job);
        if (teams.Count == 0) return crew.WhyNobody(job);
        var length = PlanGrid.Length(Remaining.Minutes(request, job));
        var lane = windows.LaneOf(job);
        if (!teams.Any(team => windows.Of(windows.TeamIndex(team), lane).Longest >= length))
        {
            return new(teams.Any(team => windows.LongestWhenFair(windows.TeamIndex(team), lane) >= length) ? LeftCause.Weather : LeftCause.NoWindow)
            {
                NeverOpen = teams.All(team => windows.Of(windows.TeamIndex(team), lane).Longest == 0),
            };
        }

        if (!StoreRoom.Passes(request, job)) return LeftCause.DoorTooNarrow;
        return StoreRoom.Holds(request, job) ? null : LeftCause.StoreFull;
    }

    /// <summary>Jobs that wait for each other in a circle.</summary>
    private static Dictionary<string, LeftReason> Circles(IReadOnlyList<Job> open)
    {
        var byId = open.DistinctBy(job => job.Id).ToDictionary(job => job.Id);
        var reasons = new Dictionary<string, LeftReason>();
        foreach (var job in byId.Values)
        {
            if (Circle(job, byId) is { } circle) reasons[job.Id] = new(LeftCause.Circle) { Circle = circle };
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
