using StormClock.Core.Advisories;
using StormClock.Core.Garden;

namespace StormClock.Core.Hazards;

/// <summary>What the wind does at one site, all standing storms and point forecasts together.</summary>
public sealed record SiteWind(Site Site, WindMembers Members)
{
    /// <summary>Cyclones alone; null where none stands.</summary>
    public WindMembers? Cyclones { get; init; }

    /// <summary>Point forecasts alone; null where none stands.</summary>
    public WindMembers? Local { get; init; }
}

/// <summary>
/// Everything that the standing sources say about one garden at one instant: wind by members at each site, alerts, orders
/// and notes. A pure view of the ledger; silence is shown as silence, never as good news.
/// </summary>
/// <param name="Winds">Empty when neither a cyclone nor a point forecast stands.</param>
/// <param name="Leading">The standing advisory that bears most on the garden; null when none stands.</param>
/// <param name="LastFinal">The newest last advisory on a storm, though its track may have ended: a storm's last word.</param>
/// <param name="Alerts">Standing official alerts that concern, or may concern, one of the sites.</param>
/// <param name="Ended">Alerts of wind for the place that stood and have ended.</param>
/// <param name="LeaveBy">The soonest leave-by time that stands.</param>
/// <param name="WindNotes">Wind entered by hand.</param>
public sealed record HazardTimeline(
    Instant AsOf,
    IReadOnlyList<SiteWind> Winds,
    CycloneAdvisory? Leading,
    CycloneAdvisory? LastFinal,
    IReadOnlyList<SiteAlert> Alerts,
    IReadOnlyList<SiteAlert> Ended,
    LeaveByNote? LeaveBy,
    IReadOnlyList<WindNote> WindNotes)
{
    /// <summary>Chances of 34 kt by the standing advisories beside the official ones issued with them, where a location is near enough.</summary>
    public IReadOnlyList<OfficialCheck> Official { get; init; } = [];

    /// <summary>Point forecasts that stand for any of the sites, the newest last.</summary>
    public IReadOnlyList<PointForecast> Points { get; init; } = [];

    /// <summary>Rain entered by hand.</summary>
    public IReadOnlyList<RainNote> RainNotes { get; init; } = [];

    /// <summary>The highest water level entered by hand on the datum of the newest; null when there is none.</summary>
    public WaterNote? Water { get; init; }

    /// <summary>The newest full advisory is old though more should have come.</summary>
    public bool IsStale => Leading is { Final: false } && Stale.Beyond(Leading, AsOf) > Duration.Zero;

    /// <summary>Id of the newest full advisory, or of what ended the threat when none stands.</summary>
    public string? NewestWord => Leading?.Id ?? LastFinal?.Id ?? (Ended.Count > 0 ? Ended[^1].Message.Id : Points.Count > 0 ? Points[^1].Id : NewestNote?.Id);

    /// <summary>Ids of all that stands for the garden, and of the alerts that have ended.</summary>
    public string StandingIds { get; init; } = "";

    /// <summary>The newest note, holding or not.</summary>
    public Note? NewestNote { get; init; }

    /// <summary>No second advisory will confirm the newest word.</summary>
    public bool IsLastWord => Leading?.Final ?? (Points.Count == 0 || Ended.Count > 0 || LastFinal is not null) && Alerts.All(alert => !alert.Holds);

    public static HazardTimeline Of(
        AdvisoryLedger ledger, GardenBook book, Instant now, Func<CycloneAdvisory, Site, IReadOnlyList<double>, WindMembers> members)
    {
        var cyclones = ledger.Cyclones(now);
        var positions = ledger.Positions(now);
        var winds = book.Sites.Select(SiteWinds).OfType<SiteWind>().ToList();
        var notes = ledger.Notes(now, book.Id);
        var timeline = new HazardTimeline(
            now,
            winds,
            cyclones.MaxBy(cyclone => Bearing(cyclone, book, now, members)),
            ledger.LastFinal(now),
            [.. book.Sites.SelectMany(site => ledger.Alerts(now, site).Concat(ledger.EndedAlerts(now, site).Where(alert => OrderLingers(alert, now)))).DistinctBy(alert => alert.Message.Id)],
            [.. book.Sites.SelectMany(site => ledger.EndedAlerts(now, site)).Where(alert => alert.Bearing.IsWind() && alert.Where == AlertWhere.Concerns).DistinctBy(alert => alert.Message.Id)],
            notes.OfType<LeaveByNote>().MinBy(note => note.LeaveBy),
            [.. notes.OfType<WindNote>()])
        {
            Points = [.. book.Sites.SelectMany(site => ledger.PointForecasts(now, site.At, PointWind.WithinNmi)).Distinct().OrderBy(forecast => forecast.IssuedAt)],
            NewestNote = ledger.NewestNote(now, book.Id),
            RainNotes = [.. notes.OfType<RainNote>()],
            Water = Highest(notes.OfType<WaterNote>().ToList()),
            Official = OfficialCheck.Of(cyclones, ledger.WindProbabilities(now), book.Sites, (cyclone, site) => members(cyclone, site, ClassStops.ThresholdsKt(book.Limits, site.Terrain))),
        };
        return timeline with { StandingIds = IdsOf(cyclones.Concat<Advisory>(positions).Concat(notes), timeline) };

        SiteWind? SiteWinds(Site site)
        {
            var thresholds = ClassStops.ThresholdsKt(book.Limits, site.Terrain);
            var storms = cyclones.Select(cyclone => Stale.Widened(Found(cyclone), Stale.Beyond(cyclone, now), Draws.Default)).ToList();
            var points = ledger.PointForecasts(now, site.At, PointWind.WithinNmi)
                .Select(forecast => Stale.Widened(PointWind.Of(forecast, thresholds, Draws.Default), Stale.Beyond(forecast, now), Draws.Default))
                .ToList();
            if (storms.Count + points.Count == 0) return null;
            return new(site, WindOutlook.Combine([.. storms, .. points]))
            {
                Cyclones = storms.Count == 0 ? null : WindOutlook.Combine(storms),
                Local = points.Count == 0 ? null : WindOutlook.Combine(points),
            };

            WindMembers Found(CycloneAdvisory cyclone) => IntermediateShift.Applied(cyclone, positions, advisory => members(advisory, site, thresholds));
        }
    }

    private static string IdsOf(IEnumerable<Advisory> storms, HazardTimeline timeline) => string.Join('\n', storms
        .Concat(timeline.Points)
        .Concat(timeline.Official.Select(check => check.Official.Table))
        .Select(advisory => advisory.Id)
        .Concat(timeline.Alerts.Concat(timeline.Ended).Select(alert => $"{alert.Message.Id} {alert.State}"))
        .Distinct());

    /// <summary>A lower level takes nothing back unless it was said to replace the higher one.</summary>
    private static WaterNote? Highest(List<WaterNote> notes) => notes.Where(note => note.Datum == notes[^1].Datum).MaxBy(note => note.LevelM);

    /// <summary>
    /// An order whose message merely ran out was never taken back: an evacuation holds on for a day, a call to shelter for an hour
    /// (conventions).
    /// </summary>
    private static bool OrderLingers(SiteAlert alert, Instant now) =>
        alert.State == AlertState.Lapsed && alert.Bearing switch
        {
            AlertBearing.Evacuate => now - alert.Until < Duration.FromHours(24),
            AlertBearing.Shelter => now - alert.Until < Duration.FromHours(1),
            _ => false,
        };

    /// <summary>Chance of 34 kt at the first site, and among storms without any the one whose forecast comes nearest.</summary>
    private static (double Chance, double Nearness) Bearing(
        CycloneAdvisory cyclone, GardenBook book, Instant now, Func<CycloneAdvisory, Site, IReadOnlyList<double>, WindMembers> members)
    {
        var site = book.Sites[0];
        var soon = WindSoon.At(members(cyclone, site, ClassStops.ThresholdsKt(book.Limits, site.Terrain)), Units.Wind.GaleKt, now);
        var nearest = cyclone.Forecast.Append(cyclone.Now)
            .Where(point => point.Centre is not null)
            .Select(point => Units.GreatCircle.DistanceNmi(point.Centre!.Value, site.At))
            .DefaultIfEmpty(double.MaxValue)
            .Min();
        return (soon.Chance, -nearest);
    }
}
