using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;

namespace StormClock.Core.Stages;

/// <summary>When each class of work stops at each site: forecast members, else an alert's arrival; notes and leave-by before all.</summary>
internal static class ClassStopTimes
{
    public static IReadOnlyDictionary<(string SiteId, WorkClass Class), StopTimes> Of(
        HazardTimeline timeline, GardenBook garden, Instant? alertArrival, WindNote? note, Instant? leaveBy)
    {
        var stops = new Dictionary<(string, WorkClass), StopTimes>();
        foreach (var site in garden.Sites)
        {
            var wind = timeline.Winds.FirstOrDefault(wind => wind.Site.Id == site.Id);
            foreach (var (workClass, limit) in garden.Limits)
            {
                var arrivals = wind is null ? [] : Arrivals(wind.Members, ClassStops.MarineKt(limit, site.Terrain), timeline.AsOf);
                if (arrivals.Count == 0 && alertArrival is { } arrival) arrivals = [arrival];
                var notAfter = note is not null && note.GustMps >= limit.GustMps && !(leaveBy < note.From) ? note.From : leaveBy;
                if (arrivals.Count > 0 || notAfter is not null) stops[(site.Id, workClass)] = new(arrivals, notAfter);
            }
        }

        return stops;
    }

    /// <summary>First crossings that are not over yet; a lone member's is taken earlier, since it has no spread of its own.</summary>
    private static List<Instant> Arrivals(WindMembers members, double marineKt, Instant now)
    {
        var soon = WindSoon.At(members, marineKt, now);
        if (soon.Earliest is not { } earliest) return [];
        if (members.Count == 1) return [earliest];

        var nowHours = (now - members.Origin).TotalHours;
        var arrivals = members.ArrivalHours(marineKt);
        var ends = members.EndHours(marineKt);
        var list = new List<Instant>();
        for (var m = 0; m < arrivals.Length; m++)
        {
            if (!float.IsNaN(arrivals[m]) && ends[m] >= nowHours) list.Add(members.Origin + Duration.FromHours(arrivals[m]));
        }

        return list;
    }
}
