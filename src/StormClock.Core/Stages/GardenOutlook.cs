using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;
using StormClock.Core.Water;

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

    // Of wind that is no cyclone; see LocalWind.
    private const double LeastLocalChance = 0.25;

    /// <summary>Rain to be ready for at the wettest site.</summary>
    public RainOutlook Rain { get; init; } = RainOutlook.None;

    public bool WorkMatters => Chance >= LeastChance || Warned || Unmatched || LeaveBy is not null;

    /// <summary>Earliest reasonable stop of ground work at any site; null when it (almost) never comes.</summary>
    public Instant? GroundStop => Stops.Where(stop => stop.Key.Class == WorkClass.Ground).Min(stop => stop.Value.Earliest);

    /// <summary>The same with every class stopped at the latest when the garden closes by the time that people were told.</summary>
    public GardenOutlook HeldTo(Instant? close) =>
        close is { } cap ? this with { Stops = Stops.ToDictionary(stop => stop.Key, stop => stop.Value.HeldTo(cap)) } : this;

    public static GardenOutlook Of(HazardTimeline timeline, GardenBook garden)
    {
        var now = timeline.AsOf;
        var cyclone = Worst(timeline, site => site.Cyclones is { } members ? WindSoon.At(members, Wind.GaleKt, now) : WindSoon.Never);
        var local = LocalWind(timeline, garden);
        var isLocal = local.Chance > cyclone.Chance;
        var gale = isLocal ? local : cyclone;
        var ground = GroundWind(timeline, garden);
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
            new(Spoken(timeline, isLocal)?.Title ?? note?.Title ?? alert.Title ?? "", Spoken(timeline, isLocal)?.Issued ?? note?.Made ?? alert.Issued, alert.Title, alert.Issued)
            {
                IsLocal = isLocal,
                LeaveNote = alert.Order == OfficialOrder.None && leaveBy is not null && leaveBy == timeline.LeaveBy?.LeaveBy && leaveBy != alert.LeaveBy ? timeline.LeaveBy : null,
                Larger = official is null ? null : new(official.Official.Table.Title, official.Official.Table.Issued, chance),
            },
            alert.OrderId ?? timeline.LeaveBy?.Id ?? Spoken(timeline, isLocal)?.Id ?? note?.Id ?? alert.Id ?? "")
        {
            Rain = RainOutlook.Of(timeline.Points, timeline.RainNotes, now),
        };
    }

    /// <summary>
    /// Wind that is no cyclone: the ground limit in place of 34 kt (science.md 4.3). Its forecasts are so unsure that less than a chance of
    /// one in four is no news (C).
    /// </summary>
    private static WindSoon LocalWind(HazardTimeline timeline, GardenBook garden)
    {
        var local = Worst(timeline, site => site.Local is { } members ? WindSoon.At(members, GroundKt(garden, site.Site), timeline.AsOf) : WindSoon.Never);
        return local.Chance >= LeastLocalChance ? local : WindSoon.Never;
    }

    /// <summary>The ground limit by the members of cyclones; a spell of a point forecast is over when the forecast as written says so.</summary>
    private static WindSoon GroundWind(HazardTimeline timeline, GardenBook garden)
    {
        var cyclone = Worst(timeline, site => site.Cyclones is { } members ? WindSoon.At(members, GroundKt(garden, site.Site), timeline.AsOf) : WindSoon.Never);
        var spell = (from site in timeline.Winds
                     from forecast in timeline.Points
                     where GreatCircle.DistanceNmi(forecast.At, site.Site.At) <= PointWind.WithinNmi
                     select PointWind.SpellEnd(forecast, GroundKt(garden, site.Site), timeline.AsOf)).Max();
        return cyclone with { LastEnd = Moments.Later(cyclone.LastEnd, spell) };
    }

    private static double GroundKt(GardenBook garden, Site site) => ClassStops.MarineKt(garden.Limits[WorkClass.Ground], site.Terrain);

    /// <summary>Who spoke: the cyclone advisory, or the newest point forecast where that weighs more or stands alone.</summary>
    private static Advisory? Spoken(HazardTimeline timeline, bool local) =>
        (local || timeline.Leading is null) && timeline.Points is [.., var newest] ? newest : timeline.Leading;

    private static WindSoon Worst(HazardTimeline timeline, Func<SiteWind, WindSoon> of)
    {
        var all = timeline.Winds.Select(of).ToList();
        if (all.Count == 0) return WindSoon.Never;
        return new(all.Max(soon => soon.Chance), all.Min(soon => soon.Earliest), all.Min(soon => soon.Likely), all.Max(soon => soon.Latest), all.Max(soon => soon.LastEnd));
    }
}
