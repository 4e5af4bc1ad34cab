using System.Collections.Immutable;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>One message with the time it reached us.</summary>
public sealed record HeardAdvisory(Advisory Advisory, Instant Heard);

/// <summary>
/// Everything heard, never changed, only added to. What stands is worked out for the moment asked, from the messages
/// issued at or before it, so that any earlier moment can be asked again with the same answer.
/// </summary>
public sealed class AdvisoryLedger
{
    /// <summary>No cyclone advisory, and no alert that gives no end, stands longer than this (C).</summary>
    public static readonly Duration LongestStanding = Duration.FromDays(5);

    private readonly ImmutableDictionary<string, HeardAdvisory> byId;

    private readonly Lazy<IReadOnlyList<HeardAdvisory>> inOrder;

    private AdvisoryLedger(ImmutableDictionary<string, HeardAdvisory> byId)
    {
        this.byId = byId;
        inOrder = new(() => [.. byId.Values.OrderBy(one => one.Advisory.Issued).ThenBy(one => one.Advisory.Id, StringComparer.Ordinal)]);
    }

    public static AdvisoryLedger Empty { get; } = new(ImmutableDictionary.Create<string, HeardAdvisory>(StringComparer.Ordinal));

    /// <summary>All messages in order of issue.</summary>
    public IReadOnlyList<HeardAdvisory> All => inOrder.Value;

    /// <summary>With this message too; a message already known changes nothing, not even the time it was first heard.</summary>
    public AdvisoryLedger With(Advisory advisory, Instant heard) =>
        byId.ContainsKey(advisory.Id) ? this : new AdvisoryLedger(byId.Add(advisory.Id, new HeardAdvisory(advisory, heard)));

    /// <summary>The newest standing full advisory of each storm, in order of storm id.</summary>
    public IReadOnlyList<CycloneAdvisory> Cyclones(Instant now) =>
        [.. StandingCyclones.Of(Known<CycloneAdvisory>(now), now).OrderBy(one => one.StormId, StringComparer.Ordinal)];

    /// <summary>The newest position of each storm from an advisory for the public, in order of storm id.</summary>
    public IReadOnlyList<CyclonePosition> Positions(Instant now) =>
    [
        .. Known<CyclonePosition>(now)
            .GroupBy(position => position.StormId, StringComparer.Ordinal)
            .Select(storm => storm.MaxBy(position => (position.IssuedAt, position.Correction ?? ' '))!)
            .OrderBy(newest => newest.StormId, StringComparer.Ordinal),
    ];

    /// <summary>The newest wind speed probabilities of each storm, in order of storm id; they stand as long as an advisory may.</summary>
    public IReadOnlyList<WindProbabilityAdvisory> WindProbabilities(Instant now) =>
    [
        .. Known<WindProbabilityAdvisory>(now)
            .GroupBy(table => table.StormId, StringComparer.Ordinal)
            .Select(storm => storm.MaxBy(table => (StandingCyclones.NumberOf(table.Number), table.IssuedAt, table.Correction ?? ' '))!)
            .Where(newest => now <= newest.IssuedAt + LongestStanding)
            .OrderBy(newest => newest.StormId, StringComparer.Ordinal),
    ];

    /// <summary>The newest point forecast of each source near a place that still reaches ahead, in order of source.</summary>
    public IReadOnlyList<PointForecast> PointForecasts(Instant now, GeoPoint place, double withinNmi) =>
    [
        .. Known<PointForecast>(now)
            .Where(forecast => GreatCircle.DistanceNmi(forecast.At, place) <= withinNmi)
            .GroupBy(forecast => forecast.Source, StringComparer.Ordinal)
            .Select(source => source.MaxBy(forecast => forecast.IssuedAt)!)
            .Where(newest => newest.Periods.Count > 0 && newest.Periods[^1].To > now)
            .OrderBy(newest => newest.Source, StringComparer.Ordinal),
    ];

    /// <summary>Alerts that stand for the site or may concern it, of every subject, in order of issue.</summary>
    public IReadOnlyList<SiteAlert> Alerts(Instant now, Site site) =>
        [.. AllAlerts(now, site).Where(alert => alert.State == AlertState.Stands)];

    /// <summary>Alerts that stood for the site and stand no longer, with how and when they ended, in order of their end.</summary>
    public IReadOnlyList<SiteAlert> EndedAlerts(Instant now, Site site) =>
        [.. AllAlerts(now, site).Where(alert => alert.State != AlertState.Stands).OrderBy(alert => alert.Until)];

    /// <summary>Wind and leave-by notes of the garden that still hold, in order of making.</summary>
    public IReadOnlyList<Note> Notes(Instant now, string gardenId) =>
        [.. StandingNotes.Of([.. Known<Note>(now).Where(note => note.GardenId == gardenId)], now)];

    /// <summary>The newest note of the garden, whether it still holds or not; null when there is none.</summary>
    public Note? NewestNote(Instant now, string gardenId) => Known<Note>(now).LastOrDefault(note => note.GardenId == gardenId);

    /// <summary>When the newest message of any source but hand-made notes was issued; null when there is none.</summary>
    public Instant? NewestContent(Instant now) =>
        Known<Advisory>(now).LastOrDefault(advisory => advisory is not Note)?.Issued;

    private IEnumerable<SiteAlert> AllAlerts(Instant now, Site site) => new StandingAlerts(Known<AlertMessage>(now), site).At(now);

    private IEnumerable<T> Known<T>(Instant now)
        where T : Advisory =>
        All.Select(one => one.Advisory).OfType<T>().Where(advisory => advisory.Issued <= now);
}
