using StormClock.Core.Advisories;
using StormClock.Core.Garden;

namespace StormClock.Core.Hazards;

/// <summary>What the wind does at one site, all standing storms together.</summary>
public sealed record SiteWind(Site Site, WindMembers Members);

/// <summary>
/// Everything that the standing sources say about one garden at one instant: wind by members at each site, alerts, orders
/// and notes. A pure view of the ledger; silence is shown as silence, never as good news.
/// </summary>
/// <param name="Winds">Empty when no cyclone stands.</param>
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
    /// <summary>A full advisory older than this has gone stale (science.md 4.2).</summary>
    private static readonly Duration AdvisoryLife = Duration.FromHours(9);

    /// <summary>Chances of 34 kt by the standing advisories beside the official ones issued with them, where a location is near enough.</summary>
    public IReadOnlyList<OfficialCheck> Official { get; init; } = [];

    /// <summary>The newest full advisory is old though more should have come.</summary>
    public bool Stale => Leading is { Final: false } && AsOf - Leading.Issued > AdvisoryLife;

    /// <summary>Id of the newest full advisory, or of what ended the threat when none stands.</summary>
    public string? NewestWord => Leading?.Id ?? LastFinal?.Id ?? (Ended.Count > 0 ? Ended[^1].Message.Id : null);

    /// <summary>No second advisory will confirm the newest word.</summary>
    public bool IsLastWord => Leading?.Final ?? Alerts.All(alert => !alert.Holds);

    public static HazardTimeline Of(
        AdvisoryLedger ledger, GardenBook book, Instant now, Func<CycloneAdvisory, Site, IReadOnlyList<double>, WindMembers> members)
    {
        var cyclones = ledger.Cyclones(now);
        var winds = cyclones.Count == 0
            ? []
            : book.Sites.Select(site => new SiteWind(site, WindOutlook.Combine([.. cyclones.Select(cyclone => members(cyclone, site, ClassStops.ThresholdsKt(book.Limits, site.Terrain)))]))).ToList();
        var notes = ledger.Notes(now, book.Id);
        return new(
            now,
            winds,
            cyclones.MaxBy(cyclone => Bearing(cyclone, book, now, members)),
            ledger.LastFinal(now),
            [.. book.Sites.SelectMany(site => ledger.Alerts(now, site).Concat(ledger.EndedAlerts(now, site).Where(alert => OrderLingers(alert, now)))).DistinctBy(alert => alert.Message.Id)],
            [.. book.Sites.SelectMany(site => ledger.EndedAlerts(now, site)).Where(alert => alert.Bearing.IsWind() && alert.Where == AlertWhere.Concerns).DistinctBy(alert => alert.Message.Id)],
            notes.OfType<LeaveByNote>().MinBy(note => note.LeaveBy),
            [.. notes.OfType<WindNote>()])
        {
            Official = OfficialCheck.Of(cyclones, ledger.WindProbabilities(now), book.Sites, (cyclone, site) => members(cyclone, site, ClassStops.ThresholdsKt(book.Limits, site.Terrain))),
        };
    }

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
