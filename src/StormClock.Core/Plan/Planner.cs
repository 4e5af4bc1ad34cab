using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>
/// Plans the open jobs back from the hour their class of work stops: list scheduling into the windows of light and of
/// people's own hours, twice. Forward gives each job the earliest time; backward gives its latest safe start. A job that
/// does not fit is left out, the least worth by the minute first, and named with its fallback.
/// </summary>
public static class Planner
{
    private static readonly Duration StartByStep = Duration.FromMinutes(15);

    public static GardenPlan Plan(PlanRequest request)
    {
        var all = request.Book.Jobs.Where(request.IsOpen).ToList();
        var open = all.Where(job => !request.Leave.ContainsKey(job.Id)).ToList();
        var leftOut = new List<LeftOutJob>();
        var slots = Fit(request, open, leftOut);
        var startBys = LatestStarts(request, slots);
        var planned = slots
            .Select(slot => new PlannedJob(
                slot.Job,
                slot.People,
                slot.Start,
                slot.End,
                startBys[slot.Job.Id],
                request.StopTimesOf(slot.Job)?.ChanceOpenUntil(slot.End) ?? 1))
            .OrderBy(job => job.Start)
            .ThenBy(job => job.Job.Id, StringComparer.Ordinal)
            .ToList();
        var jobs = planned.Select(job => job.Job).ToList();
        return new(
            request.Now, GardenStops(request), planned, leftOut, Supplies.Short(request.Book, jobs), Supplies.Stores(request.Book, jobs))
        {
            Leave = [.. all.Where(job => request.Leave.ContainsKey(job.Id)).Select(job => new LeftOutJob(job, request.Leave[job.Id], null))],
        };
    }

    /// <summary>Schedules forward; while something is late, leaves out the least worth job at or before it and tries again.</summary>
    private static List<PlannedSlot> Fit(PlanRequest request, List<Job> open, List<LeftOutJob> leftOut)
    {
        var kept = open;
        while (true)
        {
            var order = JobOrder.Of(request, kept);
            var schedule = new Schedule(request);
            var late = order.FirstOrDefault(job => !schedule.PlaceEarliest(job));
            if (late is null) return schedule.Slots;

            var drop = WhatToDrop(request, schedule, late);
            leftOut.AddRange(WithFollowers(drop, kept).Select(job => new LeftOutJob(
                job, job.Id == drop.Id ? Why(request, schedule, job, late) : "what must come before it does not fit", job.Fallback)));
            kept = [.. kept.Where(job => leftOut.All(left => left.Job.Id != job.Id))];
        }
    }

    /// <summary>Leaving out an earlier job helps only when it shares people with the late one.</summary>
    private static Job WhatToDrop(PlanRequest request, Schedule schedule, Job late)
    {
        if (!schedule.CouldEverFit(late)) return late;
        return schedule.Slots
            .Select(slot => slot.Job)
            .Where(job => !late.After.Contains(job.Id) && request.StopOf(job) <= request.StopOf(late))
            .Append(late)
            .MinBy(JobOrder.WorthByMinute)!;
    }

    private static string Why(PlanRequest request, Schedule schedule, Job job, Job late)
    {
        if (job.Id != late.Id || schedule.CouldEverFit(job)) return "no time left before this work must stop";
        if (schedule.TeamsFor(job).Count == 0) return $"needs {job.People} people at once";
        return request.StopOf(job) <= request.Now ? "this work must already have stopped" : "no window of light and own hours is long enough";
    }

    private static IEnumerable<Job> WithFollowers(Job dropped, List<Job> jobs) =>
        jobs.Where(job => job.After.Contains(dropped.Id)).SelectMany(job => WithFollowers(job, jobs)).Prepend(dropped).DistinctBy(job => job.Id);

    /// <summary>The same jobs with the same people, pushed together against their stops from the last one back.</summary>
    private static Dictionary<string, Instant> LatestStarts(PlanRequest request, List<PlannedSlot> slots)
    {
        var late = new Schedule(request);
        var latest = new Dictionary<string, Instant>();
        foreach (var slot in slots.OrderByDescending(slot => slot.Start).ThenByDescending(slot => slot.Job.Id, StringComparer.Ordinal))
        {
            var followers = slots.Where(other => other.Job.After.Contains(slot.Job.Id)).Select(other => latest[other.Job.Id]);
            var start = late.PlaceLatest(slot, followers.Append(request.StopOf(slot.Job)).Min());
            latest[slot.Job.Id] = start > slot.Start ? Instant.Max(slot.Start, RoundDown(start.Value)) : slot.Start;
        }

        return latest;
    }

    private static Instant RoundDown(Instant at) =>
        Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds() / (long)StartByStep.TotalSeconds * (long)StartByStep.TotalSeconds);

    private static Dictionary<WorkClass, WorkStop> GardenStops(PlanRequest request) =>
        Enum.GetValues<WorkClass>().ToDictionary(
            workClass => workClass,
            workClass =>
            {
                var stops = request.Stops.Where(entry => entry.Key.Class == workClass).Select(entry => entry.Value).ToList();
                return new WorkStop(stops.Min(stop => stop.Earliest), stops.Min(stop => stop.Likely));
            });
}
