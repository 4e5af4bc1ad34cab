using System.Text.Json;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Cap;

/// <summary>
/// Reads one alert that the US weather service has written as a GeoJSON feature. Its parts are those of CAP under nearly the
/// same names, so that the same alert read from either is the same message.
/// </summary>
public static class AlertFeatureReader
{
    public static bool IsAlert(ReadOnlySpan<byte> bytes) => AlertFeatureName.Of(bytes) is not null;

    public static ReadResult<AlertMessage> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > CapReader.MostBytes)
        {
            return new ReadFault("the feature", $"is larger than {CapReader.MostBytes / 1024} KB; such an alert is not read", 1);
        }

        try
        {
            using var json = JsonDocument.Parse(JsonText.WithoutMark(bytes));
            return json.RootElement.Member("properties") is { ValueKind: JsonValueKind.Object } properties
                ? ReadAlert(properties, json.RootElement.Member("geometry"))
                : new ReadFault("properties", "is missing; a feature of an alert is needed", 1);
        }
        catch (Exception error) when (JsonText.IsFaultOfBytes(error))
        {
            return JsonText.FaultOf(error);
        }
    }

    private static ReadResult<AlertMessage> ReadAlert(JsonElement alert, JsonElement? geometry)
    {
        var faults = new List<ReadFault>();
        var identifier = Needed(alert, "id", faults);
        var sender = Needed(alert, "sender", faults);
        var sent = Time(alert, "sent");
        if (sent is null) faults.Add(Fault("sent", "is no time with an offset such as 2027-09-12T10:00:00-04:00"));
        var status = CapElement.WordOf<AlertStatus>(alert.Text("status"));
        if (status is null) faults.Add(Fault("status", "is none of Actual, Exercise, System, Test, Draft"));
        var type = CapElement.WordOf<AlertMessageType>(alert.Text("messageType"));
        if (type is null) faults.Add(Fault("messageType", "is none of Alert, Update, Cancel, Ack, Error"));
        if (faults.Count > 0 || sent is null || status is null || type is null) return ReadResult.Bad<AlertMessage>(faults);

        return new AlertMessage(sender, identifier, sent.Value, status.Value, type.Value, References(alert), [Info(alert, geometry)]);
    }

    private static AlertInfo Info(JsonElement alert, JsonElement? geometry)
    {
        var parameters = Named(alert, "parameters");
        return new AlertInfo(
            alert.Text("language"),
            alert.Text("event"),
            Responses(alert),
            alert.Text("urgency"),
            alert.Text("severity"),
            alert.Text("certainty"),
            Time(alert, "effective"),
            Time(alert, "onset"),
            Time(alert, "expires"),
            CapInfo.EventEnd(parameters) ?? Time(alert, "ends"),
            alert.Text("headline"),
            alert.Text("description"),
            alert.Text("instruction"),
            parameters,
            [new AlertArea(alert.Text("areaDesc"), geometry is { } shape ? AlertFeatureShape.Polygons(shape) : [], [], Named(alert, "geocode"))])
        {
            EventCodes = Named(alert, "eventCode"),
        };
    }

    private static AlertResponse[] Responses(JsonElement alert) =>
        alert.Text("response") is { Length: > 0 } word ? [CapElement.WordOf<AlertResponse>(word) ?? AlertResponse.Other] : [];

    /// <summary>One whose sender, identifier or time is missing names nothing and is dropped.</summary>
    private static AlertReference[] References(JsonElement alert) =>
    [
        .. from one in alert.Items("references")
           let sent = Time(one, "sent")
           let reference = (Sender: one.Text("sender"), Identifier: one.Text("identifier"))
           where sent is not null && reference.Sender.Length > 0 && reference.Identifier.Length > 0
           select new AlertReference(reference.Sender, reference.Identifier, sent.Value),
    ];

    /// <summary>An object of lists, e.g. {"SAME": ["053033"], "UGC": ["WAC033"]}.</summary>
    private static AlertGeocode[] Named(JsonElement alert, string name) =>
        alert.Member(name) is { ValueKind: JsonValueKind.Object } lists
            ? [.. lists.EnumerateObject().SelectMany(list => lists.Items(list.Name).Select(code => new AlertGeocode(list.Name, code.OwnText())))]
            : [];

    private static string Needed(JsonElement alert, string name, List<ReadFault> faults)
    {
        var text = alert.Text(name);
        if (text.Length == 0) faults.Add(Fault(name, "is missing or empty"));
        return text;
    }

    private static Instant? Time(JsonElement element, string name) => CapTime.Parse(element.Text(name));

    private static ReadFault Fault(string name, string reason) => new($"properties/{name}", reason, 1);
}
