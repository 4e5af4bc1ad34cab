using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

public enum AlertStatus { Actual, Exercise, System, Test, Draft }

public enum AlertMessageType { Alert, Update, Cancel, Ack, Error }

/// <summary>CAP 1.2 responseType values that change what a gardener may do; others are kept as <c>Other</c>.</summary>
public enum AlertResponse { Shelter, Evacuate, Prepare, Execute, Avoid, Monitor, Assess, AllClear, None, Other }

/// <summary>A closed ring of an alert area, points in order; the reader closes an open one.</summary>
public sealed record AlertPolygon(IReadOnlyList<GeoPoint> Ring);

public sealed record AlertCircle(GeoPoint Centre, double RadiusKm);

/// <summary>A code such as UGC FLZ151 or SAME 012071; the name of the scheme as written.</summary>
public sealed record AlertGeocode(string Scheme, string Code);

/// <summary>Where an alert holds. An area with neither shape nor code is undecidable and may concern everybody.</summary>
public sealed record AlertArea(
    string Description,
    IReadOnlyList<AlertPolygon> Polygons,
    IReadOnlyList<AlertCircle> Circles,
    IReadOnlyList<AlertGeocode> Codes);

/// <summary>One language's account of the alert.</summary>
/// <param name="Event">The sender's name of the event, e.g. "Hurricane Warning".</param>
/// <param name="Onset">When the event is expected to begin; null when not given.</param>
/// <param name="Expires">When this message lapses. Not the end of the event.</param>
/// <param name="EventEnds">When the event itself ends, where the sender says so; null is unknown.</param>
public sealed record AlertInfo(
    string Language,
    string Event,
    IReadOnlyList<AlertResponse> Responses,
    string Urgency,
    string Severity,
    string Certainty,
    Instant? Effective,
    Instant? Onset,
    Instant? Expires,
    Instant? EventEnds,
    string Headline,
    string Description,
    string Instruction,
    IReadOnlyList<AlertGeocode> Parameters,
    IReadOnlyList<AlertArea> Areas)
{
    /// <summary>Codes of the event with the name of their scheme, e.g. SAME HUW.</summary>
    public IReadOnlyList<AlertGeocode> EventCodes { get; init; } = [];
}

/// <summary>Names an earlier alert: sender, identifier and sent time, as CAP's references do.</summary>
public sealed record AlertReference(string Sender, string Identifier, Instant Sent);

/// <summary>An alert in the Common Alerting Protocol.</summary>
public sealed record AlertMessage(
    string Sender,
    string Identifier,
    Instant Sent,
    AlertStatus Status,
    AlertMessageType Type,
    IReadOnlyList<AlertReference> References,
    IReadOnlyList<AlertInfo> Infos) : Advisory
{
    /// <summary>
    /// Identity of the event over all messages of the sender about it, where the text names it and no earlier message (VTEC, e.g.
    /// <c>KTBW.HU.W.1009.2022</c>): a later update or cancel of the same event follows an earlier one as if it referred to it.
    /// </summary>
    public string? EventId { get; init; }

    public override string Id => $"{Sender},{Identifier},{Sent:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override Instant Issued => Sent;

    public override string Title => Infos.Count == 0 ? $"{Type} from {Sender}" : Type == AlertMessageType.Cancel ? $"Cancel of {Infos[0].Event}" : Infos[0].Event;
}
