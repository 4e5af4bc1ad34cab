using System.Text;
using System.Text.Unicode;
using System.Xml;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Formats.Feeds;

/// <summary>
/// Cuts CAP alerts that stand whole inside another document out of it, one after the other: out of a document in UTF-8 in the
/// very bytes they stand in, so that a country's list is not held twice and a signature stays what it was; else as a copy.
/// </summary>
internal sealed class EmbeddedAlert : IDisposable
{
    private readonly ReadOnlyMemory<byte> document;
    private readonly BytePlaces? places;
    private readonly Lazy<AlertCopy> copy = new(() => new AlertCopy());

    public EmbeddedAlert(ReadOnlyMemory<byte> document)
    {
        this.document = document;
        places = Utf8.IsValid(document.Span) && !ClosedXml.DeclaresOther(document.Span) ? new BytePlaces(document) : null;
    }

    public static bool StandsIn(XmlReader reader) =>
        reader.LocalName == "alert" && CapReader.IsNamespace(reader.NamespaceURI);

    /// <summary>The alert as a document of its own, with the namespaces that hold around it; leaves the reader on its end.</summary>
    /// <exception cref="XmlException">Its end cannot be found.</exception>
    public ReadOnlyMemory<byte> CutOut(XmlReader reader)
    {
        var name = Encoding.UTF8.GetBytes(reader.Name);
        var begin = reader.IsEmptyElement ? -1 : PlaceOf(reader, "<"u8, name);
        if (begin < 0) return copy.Value.Of(reader);

        var missing = new MissingNamespaces(reader);
        var depth = reader.Depth;
        while (reader.Step() && reader.Depth > depth) missing.Note(reader);
        var end = PlaceOf(reader, "</"u8, name);
        var close = end < 0 ? -1 : document.Span[end..].IndexOf((byte)'>');
        if (close < 0) throw new XmlException("the end of an alert inside a list cannot be found", null, reader.Line(), 0);

        var alert = document[begin..(end + close + 1)];
        return missing.Any ? missing.Added(alert, 1 + name.Length) : alert;
    }

    public void Dispose()
    {
        if (copy.IsValueCreated) copy.Value.Dispose();
    }

    /// <summary>Index of the tag on which the reader stands; -1 when it is not there.</summary>
    private int PlaceOf(XmlReader reader, ReadOnlySpan<byte> before, ReadOnlySpan<byte> name)
    {
        var info = (IXmlLineInfo)reader;
        var at = (places?.Of(info.LineNumber, info.LinePosition) ?? -1) - before.Length;
        return at >= 0 && document.Span[at..].StartsWith(before) && document.Span[(at + before.Length)..].StartsWith(name) ? at : -1;
    }
}
