using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.LocalStatement;

/// <summary>Turns the parts of a statement into alerts: one for each event and action, with an account for each part.</summary>
internal sealed class StatementMessages(Instant issued, string correction, AlertStatus status)
{
    public IEnumerable<AlertMessage> Of(IReadOnlyList<StatementSegment> segments) =>
        segments
            .SelectMany(segment => segment.Events.Select(one => (segment, one.Told, one.Line)))
            .GroupBy(one => (one.Told.Office, one.Told.Phenomenon, one.Told.Significance, one.Told.Number, one.Told.Action, one.Told.Class))
            .Select(group => Message(group.First().Told, [.. group.Select(one => Account(one.segment, one.Told, one.Line))]));

    private AlertMessage Message(VtecEvent told, IReadOnlyList<AlertInfo> infos)
    {
        var eventId = EventIdOf(told);
        var identifier = $"{eventId}/{told.Action}{(told.Class == 'O' ? "" : "/" + told.Class)}{(correction.Length > 0 ? "/" + correction : "")}";
        return new AlertMessage(told.Office, identifier, issued, told.Class == 'O' ? status : AlertStatus.Test, TypeOf(told.Action), [], infos) { EventId = eventId };
    }

    /// <summary>Numbers start anew each year; an event that has begun already bears the year it is spoken of.</summary>
    private string EventIdOf(VtecEvent told) =>
        FormattableString.Invariant($"{told.Office}.{told.Phenomenon}.{told.Significance}.{told.Number}.{(told.Begins ?? issued).InUtc().Year}");

    /// <summary>
    /// An upgraded watch is over as such: the warning that takes its place stands in the same text. An event that runs out (EXP) is an
    /// update, because its text may come before the end that it names.
    /// </summary>
    private static AlertMessageType TypeOf(string action) => action switch
    {
        "NEW" => AlertMessageType.Alert,
        "CAN" or "UPG" => AlertMessageType.Cancel,
        _ => AlertMessageType.Update,
    };

    private AlertInfo Account(StatementSegment segment, VtecEvent told, string line) => new(
        "en-US",
        VtecNames.Of(told),
        [],
        "Unknown",
        "Unknown",
        "Unknown",
        issued,
        told.Begins,
        segment.Ugc.Expires,
        told.Ends,
        segment.Headline,
        string.Join('\n', segment.Words).Trim(),
        "",
        [new("VTEC", line), .. segment.WindWords],
        [segment.Area])
    {
        EventCodes = [new("VTEC", $"{told.Phenomenon}.{told.Significance}")],
    };
}
