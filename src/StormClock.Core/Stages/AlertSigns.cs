using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Stages;

/// <summary>What standing official alerts add to the forecast (science.md 4.1; floors and lead times are conventions, mark C).</summary>
/// <param name="ChanceFloor">The chance of 34 kt wind is taken as at least this.</param>
/// <param name="Arrival">When the wind is to be expected where no forecast of it is at hand.</param>
/// <param name="Unmatched">An alert of wind, or an order, whose area cannot be matched: it may concern the place.</param>
/// <param name="LeaveBy">An evacuation that begins later: leave before it.</param>
/// <param name="ShelterBy">A shelter order that begins later: everybody is in before it, and nobody leaves.</param>
internal sealed record AlertSigns(
    double ChanceFloor, Instant? Arrival, bool Warned, bool Unmatched, OfficialOrder Order, Instant? LeaveBy, Instant? ShelterBy, string? OrderId, string? Id, string? Title, Instant? Issued)
{
    /// <summary>
    /// An alert whose onset is its own sending says nothing of arrival: then this is assumed, half a day sooner than the official
    /// lead of 36 h for a warning and 48 h for a watch (trade.md 1.2).
    /// </summary>
    private static readonly Duration WarningLead = Duration.FromHours(24);
    private static readonly Duration WatchLead = Duration.FromHours(36);

    private static readonly AlertSigns None = new(0, null, false, false, OfficialOrder.None, null, null, null, null, null, null);

    public static AlertSigns Of(IReadOnlyList<SiteAlert> alerts, Instant now) =>
        alerts.OrderBy(alert => alert.Bearing).ThenBy(alert => alert.Message.Id, StringComparer.Ordinal).Select(alert => Of(alert, now)).Aggregate(None, Stronger);

    private static AlertSigns Of(SiteAlert alert, Instant now)
    {
        var signs = None with { Id = alert.Message.Id, Title = alert.Message.Title, Issued = alert.Message.Sent };
        var starts = alert.Info?.Onset ?? alert.Info?.Effective ?? alert.Message.Sent;
        var order = alert.Bearing is AlertBearing.Evacuate or AlertBearing.Shelter;
        if (alert.Where != AlertWhere.Concerns) return order || alert.Bearing.IsWind() ? signs with { Unmatched = true } : None;
        if (order)
        {
            signs = signs with { OrderId = alert.Message.Id };
            var kind = alert.Bearing == AlertBearing.Evacuate ? OfficialOrder.Evacuate : OfficialOrder.Shelter;
            if (starts <= now) return signs with { Order = kind };
            return kind == OfficialOrder.Evacuate ? signs with { LeaveBy = starts } : signs with { ShelterBy = starts };
        }

        var (floor, warned, lead) = alert.Bearing switch
        {
            AlertBearing.HurricaneWarning => (0.8, true, WarningLead),
            AlertBearing.TropicalStormWarning => (0.6, true, WarningLead),
            AlertBearing.WindWarning => (0.6, true, Duration.Zero),
            AlertBearing.HurricaneWatch => (0.5, false, WatchLead),
            AlertBearing.TropicalStormWatch => (0.3, false, WatchLead),
            _ => (0, false, Duration.Zero),
        };
        if (floor == 0) return None;
        var arrival = starts > alert.Message.Sent + Duration.FromHours(1) ? starts : alert.Message.Sent + lead;
        return signs with { ChanceFloor = floor, Warned = warned, Arrival = arrival };
    }

    private static AlertSigns Stronger(AlertSigns a, AlertSigns b)
    {
        var named = b.Order > a.Order || b.OrderId is not null || b.ChanceFloor > a.ChanceFloor || a.Id is null ? b : a;
        return named with
        {
            ChanceFloor = Math.Max(a.ChanceFloor, b.ChanceFloor),
            Arrival = Moments.Sooner(a.Arrival, b.Arrival),
            Warned = a.Warned || b.Warned,
            Unmatched = a.Unmatched || b.Unmatched,
            Order = (OfficialOrder)Math.Max((int)a.Order, (int)b.Order),
            LeaveBy = Moments.Sooner(a.LeaveBy, b.LeaveBy),
            ShelterBy = Moments.Sooner(a.ShelterBy, b.ShelterBy),
            OrderId = b.OrderId ?? a.OrderId,
        };
    }
}
