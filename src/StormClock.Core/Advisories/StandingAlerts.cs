using StormClock.Core.Garden;

namespace StormClock.Core.Advisories;

/// <summary>
/// Which alerts stand for a site and how those that stood have ended. An update or a cancel speaks for the places it
/// names, and one without areas for all: an update that names only other places leaves the alert standing here, because
/// senders cut a warning into one message for each part. Only the sender of an alert may end it.
/// </summary>
internal sealed class StandingAlerts
{
    private readonly Site site;
    private readonly List<AlertMessage> messages;
    private readonly ILookup<AlertReference, AlertMessage> followers;
    private readonly ILookup<string, AlertMessage> byIdentifier;

    /// <param name="known">All alerts issued by now.</param>
    public StandingAlerts(IEnumerable<AlertMessage> known, Site site)
    {
        this.site = site;
        messages = [.. known.Where(message => message.Status == AlertStatus.Actual && WhereOf(message) != AlertWhere.Elsewhere)];
        followers = messages
            .Where(message => message.Type is AlertMessageType.Update or AlertMessageType.Cancel)
            .SelectMany(message => message.References.Distinct().Select(reference => (reference, message)))
            .ToLookup(pair => pair.reference, pair => pair.message);
        byIdentifier = messages.ToLookup(message => message.Identifier, StringComparer.Ordinal);
    }

    /// <summary>Every alert that was ever about the site and was not replaced by a later one about it.</summary>
    public IEnumerable<SiteAlert> At(Instant now) =>
        messages
            .Where(message => message.Type is AlertMessageType.Alert or AlertMessageType.Update)
            .Select(message => At(message, now))
            .OfType<SiteAlert>();

    private SiteAlert? At(AlertMessage message, Instant now)
    {
        var here = InfosHere(message);
        if (message.Infos.Count > 0 && !here.Any(one => !IsAllClear(one.Info))) return null;

        var where = WhereOf(message);
        var later = followers[new AlertReference(message.Sender, message.Identifier, message.Sent)]
            .Concat(UpdatesUnderItsIdentifier(message))
            .Where(next => next.Sent > message.Sent && next.Sender == message.Sender && SpeaksFor(next, where))
            .OrderBy(next => next.Sent)
            .ToList();
        if (later.Any(next => !Ends(next))) return null;

        var (state, until) = StateOf(here, message.Sent, later.Count > 0 ? later[0].Sent : null, now);
        var (info, bearing) = Strongest(here);
        return new SiteAlert(message, info, where, bearing, state, until);
    }

    /// <summary>
    /// Some senders go on under one identifier without a reference. Such an update may continue an alert but not end it, since
    /// the identifier may also have been used again for something else.
    /// </summary>
    private IEnumerable<AlertMessage> UpdatesUnderItsIdentifier(AlertMessage message) =>
        byIdentifier[message.Identifier].Where(next => next.Type == AlertMessageType.Update && next.References.Count == 0 && !Ends(next));

    private static (AlertState State, Instant Until) StateOf(
        List<(AlertInfo Info, AlertWhere Where)> here, Instant sent, Instant? cancelled, Instant now)
    {
        var (until, over) = EndOf(here, sent);
        if (cancelled is { } at && !(over && until <= at)) return (AlertState.Cancelled, at);
        if (now < until) return (AlertState.Stands, until);
        return (over ? AlertState.Over : AlertState.Lapsed, until);
    }

    /// <summary>
    /// The latest end over the accounts: the event's where the sender gives it, else that of the message, else five days
    /// after it was sent (C). Over is true when it is the end of the event.
    /// </summary>
    private static (Instant Until, bool Over) EndOf(List<(AlertInfo Info, AlertWhere Where)> here, Instant sent) =>
        here.Where(one => !IsAllClear(one.Info))
            .Select(one => (Until: one.Info.EventEnds ?? one.Info.Expires ?? sent + AdvisoryLedger.LongestStanding, Over: one.Info.EventEnds is not null))
            .OrderByDescending(end => end.Until)
            .ThenBy(end => end.Over)
            .FirstOrDefault((sent + AdvisoryLedger.LongestStanding, false));

    private static (AlertInfo? Info, AlertBearing Bearing) Strongest(List<(AlertInfo Info, AlertWhere Where)> here)
    {
        var bearing = AlertBearings.Strongest(here.Select(one => AlertBearings.Of(one.Info)));
        var strongest = here.Select(one => one.Info).Where(info => AlertBearings.Of(info) == bearing);
        return (strongest.OrderByDescending(IsEnglish).FirstOrDefault(), bearing);
    }

    /// <summary>A follower that is itself undecidable ends only what was undecidable before.</summary>
    private bool SpeaksFor(AlertMessage next, AlertWhere where)
    {
        if (next.Infos.All(info => info.Areas.Count == 0)) return true;
        return WhereOf(next) is var nextWhere && nextWhere != AlertWhere.Elsewhere && nextWhere >= where;
    }

    private bool Ends(AlertMessage next)
    {
        if (next.Type == AlertMessageType.Cancel) return true;
        var here = InfosHere(next);
        return here.Count > 0 && here.All(one => IsAllClear(one.Info));
    }

    private List<(AlertInfo Info, AlertWhere Where)> InfosHere(AlertMessage message) =>
        [.. message.Infos.Select(info => (info, AlertPlace.Of(info, site))).Where(one => one.Item2 != AlertWhere.Elsewhere)];

    private AlertWhere WhereOf(AlertMessage message) =>
        message.Infos.Count == 0 ? AlertWhere.MayConcern : message.Infos.Max(info => AlertPlace.Of(info, site));

    /// <summary>CAP 1.2 takes an account that names no language for English.</summary>
    private static bool IsEnglish(AlertInfo info) => info.Language.Length == 0 || info.Language.StartsWith("en", StringComparison.OrdinalIgnoreCase);

    private static bool IsAllClear(AlertInfo info) => info.Responses.Contains(AlertResponse.AllClear);
}
