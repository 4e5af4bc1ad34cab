using System.Xml;

namespace StormClock.Core.Formats.Feeds;

/// <summary>A CAP alert that stands whole inside another document.</summary>
internal static class EmbeddedAlert
{
    private static readonly XmlWriterSettings Plain = new()
    {
        OmitXmlDeclaration = true,
        NewLineHandling = NewLineHandling.None,
        CheckCharacters = false,
        Encoding = new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
    };

    public static bool StandsIn(XmlReader reader) =>
        reader.LocalName == "alert" && reader.NamespaceURI.Contains(":emergency:cap:", StringComparison.OrdinalIgnoreCase);

    /// <summary>The alert as a document of its own, with the namespaces that hold around it; leaves the reader on its end.</summary>
    public static ReadOnlyMemory<byte> CutOut(XmlReader reader)
    {
        var bytes = new MemoryStream();
        using (var writer = XmlWriter.Create(bytes, Plain))
        {
            var depth = reader.Depth;
            do
            {
                Copy(reader, writer);
            }
            while (!(reader.Depth == depth && (reader.NodeType == XmlNodeType.EndElement || reader.IsEmptyElement)) && reader.Step());
        }

        return bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
    }

    private static void Copy(XmlReader reader, XmlWriter writer)
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
                writer.WriteString(reader.Value);
                break;
        }
    }
}
