using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Stages;

/// <summary>The timeline boiled down to what a garden acts on: chance, times, stops by class, orders, and who said it.</summary>
/// <param name="Chance">Chance of 34 kt at the worst-placed site, alert floors included, and the official chance where that is larger and
/// the two sources differ.</param>
/// <param name="Earliest">Earliest reasonable arrival of that wind at any site.</param>
/// <param name="Ground">Ground work limit at the worst-placed site.</param>
/// <param name="Stops">When each class stops at each site.</param>
/// <param name="Unmatched">An alert stands whose area cannot be matched: it may concern the garden.</param>
/// <param name="LeaveBy">Leave-by time from a note, or the onset of an evacuation order still to come.</param>
/// <param name="OrderId">Names the order or leave-by; null when there is none.</param>
/// <param name="Cause">Id of the message that weighs most.</param>
public sealed record GardenOutlook(
    double Chance,
    Instant? Earliest,
    WindSoon Ground,
    IReadOnlyDictionary<(string SiteId, WorkClass Class), StopTimes> Stops,
    bool Warned,
    bool Unmatched,
    OfficialOrder Order,
    Instant? LeaveBy,
    string? OrderId,
    StageSource Source,
    string Cause)
{
    /// <summary>Below this nothing is planned (half the lowest stage limit).</summary>
    private const double LeastChance = 0.05;

    public bool WorkMatters => Chance >= LeastChance || Warned || Unmatched || LeaveBy is not null;

    /// <summary>Earliest reasonable stop of ground work at any site; null when it (almost) never comes.</summary>
    public Instant? GroundStop => Stops.Where(stop => stop.Key.Class == WorkClass.Ground).Min(stop => stop.Value.Earliest);

    /// <summary>The same with every class stopped at the latest when the garden closes by the time that people were told.</summary>
    public GardenOutlook HeldTo(Instant? close) =>
        close is { } cap ? this with { Stops = Stops.ToDictionary(stop => stop.Key, stop => stop.Value.HeldTo(cap)) } : this;

    public static GardenOutlook Of(HazardTimeline timeline, GardenBook garden)
    {
        var now = timeline.AsOf;
        var gale = Worst(timeline, site => WindSoon.At(site.Members, Wind.GaleKt, now));
        var ground = Worst(timeline, site => WindSoon.At(site.Members, ClassStops.MarineKt(garden.Limits[WorkClass.Ground], site.Site.Terrain), now));
        var alert = AlertSigns.Of(timeline.Alerts, now);

        // Told to shelter, nobody sets out, whatever hour was named for leaving.
        var leaveBy = alert.Order == OfficialOrder.Shelter ? null : Moments.Sooner(timeline.LeaveBy?.LeaveBy, alert.LeaveBy);
        var note = timeline.WindNotes.Where(wind => wind.GustMps >= garden.Limits[WorkClass.Ground].GustMps).MinBy(wind => wind.From)
            ?? timeline.WindNotes.MinBy(wind => wind.From);
        var noteCloses = note is not null && note.GustMps >= garden.Limits[WorkClass.Ground].GustMps;
        var chance = Math.Max(gale.Chance, alert.ChanceFloor);
        var official = noteCloses ? null : timeline.Official.Where(check => check.Differs && check.OfficialChance > chance).MaxBy(check => check.OfficialChance);
        var assumed = alert.Arrival ?? official?.Official.Earliest(Wind.GaleKt);
        var earliest = gale.Earliest ?? assumed;
        return new(
            noteCloses ? 1 : official?.OfficialChance ?? chance,
            noteCloses ? Moments.Sooner(earliest, note!.From) : earliest,
            noteCloses ? ground with { LastEnd = Moments.Later(ground.LastEnd, note!.Until ?? note.From + Duration.FromHours(12)) } : ground,
            ClassStopTimes.Of(timeline, garden, assumed, Moments.Sooner(leaveBy, alert.ShelterBy)),
            alert.Warned,
            alert.Unmatched,
            alert.Order,
            leaveBy,
            alert.OrderId ?? timeline.LeaveBy?.Id,
            new(timeline.Leading?.Title ?? note?.Title ?? alert.Title ?? "", timeline.Leading?.Issued ?? note?.Made ?? alert.Issued, alert.Title ?? timeline.LeaveBy?.Title, alert.Issued ?? timeline.LeaveBy?.Made)
            {
                Larger = official is null ? null : new(official.Official.Table.Title, official.Official.Table.Issued, chance),
            },
            alert.OrderId ?? timeline.LeaveBy?.Id ?? timeline.Leading?.Id ?? note?.Id ?? alert.Id ?? "");
    }

    private static WindSoon Worst(HazardTimeline timeline, Func<SiteWind, WindSoon> of)
    {
        var all = timeline.Winds.Select(of).ToList();
        if (all.Count == 0) return WindSoon.Never;
        return new(all.Max(soon => soon.Chance), all.Min(soon => soon.Earliest), all.Min(soon => soon.Likely), all.Max(soon => soon.Latest), all.Max(soon => soon.LastEnd));
    }
}
