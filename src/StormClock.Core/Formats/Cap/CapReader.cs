using System.Xml;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Cap;

/// <summary>
/// Reads one alert of the Common Alerting Protocol, 1.2, 1.1 or 1.0, also in an EDXL-DE envelope. Elements are known by namespace and local name, never by
/// prefix; values are trimmed; words and times that are not understood become "unknown" where that keeps the alert
/// standing, and only what the alert is known by (identifier, sender, sent, status, msgType) must be right.
/// </summary>
public static class CapReader
{
    /// <summary>Larger messages are refused unread. The largest real one at hand, with sound in it, has 104 KB.</summary>
    public const int MostBytes = 1024 * 1024;

    /// <summary>CAP 1.2, 1.1 and 1.0.</summary>
    private static readonly string[] Versions =
        ["urn:oasis:names:tc:emergency:cap:1.2", "urn:oasis:names:tc:emergency:cap:1.1", "http://www.incident.com/cap/1.0"];

    internal static bool IsNamespace(string uri) => Versions.Contains(uri);

    public static ReadResult<AlertMessage> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes)
        {
            return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB; such an alert is not read", 1);
        }

        var result = ClosedXml.Read(bytes, MostBytes, ReadDocument);
        return !result.IsGood && KnownProduct.Of(bytes.Span) is var kind && !KnownProduct.IsMarkup(kind)
            ? ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}, not a CAP alert")
            : result;
    }

    /// <summary>The alert that is the document, or the only one in an envelope; then all the rest, which must be sound XML too.</summary>
    private static ReadResult<AlertMessage> ReadDocument(XmlReader reader)
    {
        reader.MoveToContent();
        var isEnvelope = reader.LocalName == "EDXLDistribution";
        if (isEnvelope && !StepToAlert(reader)) return ReadFault.At(1, "this is an EDXL-DE envelope without a CAP alert");
        if (reader.LocalName != "alert" || !IsNamespace(reader.NamespaceURI)) return NotAnAlert(reader);

        var alert = CapElement.Read(reader);
        if (isEnvelope && StepToAlert(reader)) return ReadFault.At(reader.Line(), "this is an EDXL-DE envelope with more than one CAP alert; it is read as a list");
        while (reader.Step()) { }
        return ReadAlert(alert);
    }

    private static bool StepToAlert(XmlReader reader)
    {
        while (reader.Step())
        {
            if (reader.NodeType == XmlNodeType.Element && reader.LocalName == "alert" && IsNamespace(reader.NamespaceURI)) return true;
        }

        return false;
    }

    private static ReadFault NotAnAlert(XmlReader root) => new(
        root.LocalName,
        root.LocalName == "alert"
            ? $"an alert of the namespace \"{root.NamespaceURI}\"; CAP 1.2, 1.1 and 1.0 are read"
            : $"this is {DocumentName(root.LocalName)}, not a single CAP alert",
        root.Line());

    private static string DocumentName(string root) => root.ToLowerInvariant() switch
    {
        "feed" => KnownProduct.NameOf(ProductKind.AtomFeed),
        "rss" => KnownProduct.NameOf(ProductKind.RssFeed),
        "html" => KnownProduct.NameOf(ProductKind.HtmlPage),
        _ => $"an XML document <{root}>",
    };

    private static ReadResult<AlertMessage> ReadAlert(CapElement alert)
    {
        var faults = new List<ReadFault>();
        var identifier = Needed(alert, "identifier", faults);
        var sender = Needed(alert, "sender", faults);
        var sent = alert.Time("sent");
        if (sent is null) faults.Add(alert.Fault("sent", "is no time with an offset such as 2027-09-12T10:00:00-04:00"));
        var status = alert.Word<AlertStatus>("status");
        if (status is null) faults.Add(alert.Fault("status", "is none of Actual, Exercise, System, Test, Draft"));
        var type = alert.Word<AlertMessageType>("msgType");
        if (type is null) faults.Add(alert.Fault("msgType", "is none of Alert, Update, Cancel, Ack, Error"));
        if (faults.Count > 0 || sent is null || status is null || type is null) return ReadResult.Bad<AlertMessage>(faults);

        return new AlertMessage(
            sender,
            identifier,
            sent.Value,
            status.Value,
            type.Value,
            References(alert.Text("references")),
            [.. alert.All("info").Select(CapInfo.Read)]);
    }

    private static string Needed(CapElement alert, string name, List<ReadFault> faults)
    {
        var text = alert.Text(name);
        if (text.Length == 0) faults.Add(alert.Fault(name, "is missing or empty"));
        return text;
    }

    /// <summary>"sender,identifier,sent" apart by blanks; one whose time cannot be read names nothing and is dropped.</summary>
    private static List<AlertReference> References(string text)
    {
        var references = new List<AlertReference>();
        foreach (var written in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            var first = written.IndexOf(',', StringComparison.Ordinal);
            var last = written.LastIndexOf(',');
            if (first > 0 && last > first + 1 && CapTime.Parse(written[(last + 1)..]) is { } sent)
            {
                references.Add(new AlertReference(written[..first], written[(first + 1)..last], sent));
            }
        }

        return references;
    }
}
