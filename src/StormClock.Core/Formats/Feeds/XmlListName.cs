using System.Xml;

namespace StormClock.Core.Formats.Feeds;

/// <summary>The names that one kind of list in XML gives to its parts, all in the namespace of its root.</summary>
/// <param name="Entry">Element of one entry.</param>
/// <param name="Id">Element with the identity of an entry.</param>
/// <param name="Updated">Elements with the time of the list or of an entry, the better one first.</param>
/// <param name="Body">Elements that may hold the message as text.</param>
internal sealed record XmlListName(string Root, string Namespace, string Entry, string Id, string[] Updated, string[] Body)
{
    private static readonly XmlListName[] Known =
    [
        new("feed", "http://www.w3.org/2005/Atom", "entry", "id", ["updated", "published"], ["content", "summary"]),
        new("rss", "", "item", "guid", ["lastBuildDate", "pubDate"], ["description"]),
        new("EDXLDistribution", "urn:oasis:names:tc:emergency:EDXL:DE:1.0", "contentObject", "contentDescription", ["dateTimeSent"], []),
        new("EDXLDistribution", "urn:oasis:names:tc:emergency:edxl:de:2.0", "contentObject", "contentDescription", ["dateTimeSent"], []),
    ];

    /// <summary>By the root of what stands in the reader; null when it is no such list.</summary>
    public static XmlListName? Of(XmlReader reader) =>
        reader.MoveToContent() == XmlNodeType.Element
            ? Known.FirstOrDefault(one => one.Root == reader.LocalName && one.Namespace == reader.NamespaceURI)
            : null;

    /// <summary>By the first bytes; null also when they are no XML or have a DTD.</summary>
    public static XmlListName? Of(ReadOnlyMemory<byte> head) =>
        ClosedXml.Read<XmlListName>(head, FeedIndexReader.MostBytes, reader => Of(reader) is { } name ? name : ReadFault.At(1, "this is no list of messages")).Value;
}
