using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Light for work by site and date, reckoned once: people share the sun.</summary>
internal sealed class LightHours(GardenBook book)
{
    private readonly Dictionary<(string SiteId, LocalDate Date, bool Ground), Interval?> known = [];

    public Interval? On(LocalDate date, Site site, WorkClass workClass)
    {
        // All classes but ground work keep the same light (science.md 7).
        var key = (site.Id, date, workClass == WorkClass.Ground);
        if (known.TryGetValue(key, out var light)) return light;
        return known[key] = WorkLight.On(date, site.At, book.Zone, workClass);
    }
}
