using System.Text;
using System.Xml;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Copies alerts out of a document that is not in UTF-8, one after the other.</summary>
internal sealed class AlertCopy : IDisposable
{
    private readonly MemoryStream bytes = new();
    private readonly char[] piece = new char[4096];
    private readonly XmlWriter writer;

    public AlertCopy() => writer = XmlWriter.Create(bytes, new XmlWriterSettings
    {
        OmitXmlDeclaration = true,
        ConformanceLevel = ConformanceLevel.Fragment,
        NewLineHandling = NewLineHandling.None,
        CheckCharacters = false,
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
    });

    /// <summary>The alert as a document of its own, with the namespaces that hold around it; leaves the reader on its end.</summary>
    public ReadOnlyMemory<byte> Of(XmlReader reader)
    {
        bytes.SetLength(0);
        var depth = reader.Depth;
        do
        {
            Copy(reader);
        }
        while (!(reader.Depth == depth && (reader.NodeType == XmlNodeType.EndElement || reader.IsEmptyElement)) && reader.Step());

        writer.Flush();
        return bytes.ToArray();
    }

    public void Dispose() => writer.Dispose();

    private void Copy(XmlReader reader)
    {
        switch (reader.NodeType)
        {
            case XmlNodeType.Element:
                writer.WriteStartElement(reader.Prefix, reader.LocalName, reader.NamespaceURI);
                writer.WriteAttributes(reader, defattr: false);
                if (reader.IsEmptyElement) writer.WriteEndElement();
                break;
            case XmlNodeType.EndElement:
                writer.WriteEndElement();
                break;
            case XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace:
                CopyText(reader);
                break;
        }
    }

    /// <summary>Piece by piece, since the words of a country's alerts are most of its list.</summary>
    private void CopyText(XmlReader reader)
    {
        for (var length = reader.ReadValueChunk(piece, 0, piece.Length); length > 0; length = reader.ReadValueChunk(piece, 0, piece.Length))
        {
            writer.WriteChars(piece, 0, length);
        }
    }
}
