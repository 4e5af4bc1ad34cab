using System.Xml;
using System.Xml.Linq;

namespace StormClock.Core.Formats.AviationAdvisory;

/// <summary>Bytes to XML without doors: no DTD, no entity from elsewhere, nothing fetched.</summary>
internal static class AviationXml
{
    /// <summary>An advisory needs some ten levels; gathering the text of very deep ones would burst the stack.</summary>
    private const int MostLevels = 64;

    private const int MostChars = 1024 * 1024;

    private static readonly XmlReaderSettings Closed = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersInDocument = MostChars,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
    };

    public static ReadResult<XElement> Root(ReadOnlyMemory<byte> bytes)
    {
        var copy = bytes.ToArray();
        try
        {
            if (LineTooDeep(copy) is { } line) return ReadFault.At(line, $"elements within elements more than {MostLevels} deep");
            using var reader = XmlReader.Create(new MemoryStream(copy, writable: false), Closed);
            return XDocument.Load(reader, LoadOptions.SetLineInfo).Root!;
        }
        catch (XmlException error)
        {
            return ReadFault.At(Math.Max(error.LineNumber, 1), $"not well-formed XML, or XML with a DTD: {error.Message}");
        }
        catch (Exception error) when (error is ArgumentException or NotSupportedException or InvalidOperationException)
        {
            return ReadFault.At(1, $"the XML cannot be decoded: {error.Message}");
        }
    }

    public static int LineOf(XElement element) => element is IXmlLineInfo info && info.HasLineInfo() ? info.LineNumber : 1;

    private static int? LineTooDeep(byte[] bytes)
    {
        using var reader = XmlReader.Create(new MemoryStream(bytes, writable: false), Closed);
        while (reader.Read())
        {
            if (reader.Depth > MostLevels) return ((IXmlLineInfo)reader).LineNumber;
        }

        return null;
    }
}
