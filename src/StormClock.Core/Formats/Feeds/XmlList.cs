using System.Xml;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Reads a list in XML in one pass. Elements are known by namespace and local name, never by prefix.</summary>
internal sealed class XmlList : IDisposable
{
    private readonly XmlReader reader;
    private readonly XmlListName name;
    private readonly bool carriesTexts;
    private readonly EmbeddedAlert alerts;
    private readonly Dictionary<string, string> head = [];
    private readonly List<FeedEntry> entries = [];

    private XmlList(ReadOnlyMemory<byte> bytes, XmlReader reader, XmlListName name)
    {
        alerts = new(bytes);
        this.reader = reader;
        this.name = name;
        carriesTexts = DeclaresCycloneCentre(reader);
    }

    public static ReadResult<FeedIndex> Read(ReadOnlyMemory<byte> bytes) =>
        ClosedXml.Read<FeedIndex>(
            bytes,
            FeedIndexReader.MostBytes,
            reader =>
            {
                if (XmlListName.Of(reader) is not { } name) return ReadFault.At(1, "this is no list of messages");
                using var list = new XmlList(bytes, reader, name);
                return list.Read();
            });

    public void Dispose() => alerts.Dispose();

    private FeedIndex Read()
    {
        var field = "";
        while (entries.Count <= FeedIndexReader.MostEntries && reader.Step())
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                field = reader.NamespaceURI == name.Namespace && !IsPicture() ? reader.LocalName : "";
                if (field == name.Entry) entries.AddRange(ReadEntry().Finish(carriesTexts));
            }
            else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
            {
                head.TryAdd(field, reader.Value.Trim());
            }
        }

        var updated = name.Updated.Select(one => FeedTime.Parse(head.GetValueOrDefault(one, ""))).FirstOrDefault(time => time is not null);
        return new FeedIndex(head.GetValueOrDefault("title", ""), updated, entries);
    }

    /// <summary>RSS has a picture of the channel, with a title of its own.</summary>
    private bool IsPicture()
    {
        if (reader.LocalName != "image") return false;
        if (reader.IsEmptyElement) return true;
        while (reader.Step() && !(reader.NodeType == XmlNodeType.EndElement && reader.LocalName == "image")) { }
        return true;
    }

    private XmlEntry ReadEntry()
    {
        var entry = new XmlEntry(name);
        var depth = reader.Depth;
        var field = "";
        if (reader.IsEmptyElement) return entry;
        while (reader.Step() && reader.Depth > depth)
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                if (EmbeddedAlert.StandsIn(reader)) entry.Add(alerts.CutOut(reader));
                else if (reader.Depth == depth + 1) field = BeginField(entry);
            }
            else if (reader.Depth == depth + 2 && reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
            {
                entry.Add(field, reader.Value);
            }
        }

        return entry;
    }

    private string BeginField(XmlEntry entry)
    {
        if (reader.NamespaceURI != name.Namespace) return "";
        var href = reader.GetAttribute("href") ?? reader.GetAttribute("url");
        if (href is not null) entry.AddLink(href, reader.GetAttribute("rel"), reader.GetAttribute("type"));
        return reader.LocalName;
    }

    /// <summary>The cyclone centre's channel says so by declaring its namespace.</summary>
    private static bool DeclaresCycloneCentre(XmlReader root)
    {
        var found = false;
        for (var more = root.MoveToFirstAttribute(); more; more = root.MoveToNextAttribute())
        {
            found |= root.Prefix == "xmlns" && root.Value.EndsWith("//www.nhc.noaa.gov", StringComparison.Ordinal);
        }

        root.MoveToElement();
        return found;
    }
}
