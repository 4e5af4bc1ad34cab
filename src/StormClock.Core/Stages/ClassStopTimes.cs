using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Stages;

/// <summary>When each class of work stops at each site: forecast members, else the arrival assumed from an alert or the official
/// chances; notes and orders before all.</summary>
internal static class ClassStopTimes
{
    public static IReadOnlyDictionary<(string SiteId, WorkClass Class), StopTimes> Of(
        HazardTimeline timeline, GardenBook garden, Instant? assumedArrival, Instant? orderBy)
    {
        var stops = new Dictionary<(string, WorkClass), StopTimes>();
        foreach (var site in garden.Sites)
        {
            var wind = timeline.Winds.FirstOrDefault(wind => wind.Site.Id == site.Id);
            foreach (var (workClass, limit) in garden.Limits)
            {
                var noted = timeline.WindNotes.Where(note => note.GustMps >= limit.GustMps).Min(note => (Instant?)note.From);
                var notAfter = Moments.Sooner(noted, orderBy);
                if (Stop(wind, ClassStops.MarineKt(limit, site.Terrain), timeline.AsOf, assumedArrival, notAfter) is { } stop) stops[(site.Id, workClass)] = stop;
            }
        }

        return stops;
    }

    private static StopTimes? Stop(SiteWind? wind, double marineKt, Instant now, Instant? assumedArrival, Instant? notAfter)
    {
        var soon = wind is null ? WindSoon.Never : WindSoon.At(wind.Members, marineKt, now);
        if (soon.Earliest is not { } earliest)
        {
            return Moments.Sooner(assumedArrival, notAfter) is { } known ? new(known) : null;
        }

        // A lone member has no spread of its own: its stop is taken at the careful end.
        if (wind!.Members.Count == 1) return new(Moments.Sooner(earliest, notAfter)!.Value);
        return new(wind.Members.Unfinished(marineKt, now), wind.Members.Origin, now, notAfter);
    }
}
