using System.Runtime.InteropServices;
using System.Xml;

namespace StormClock.Core.Formats;

/// <summary>XML read without doors: no DTD, no entity from elsewhere, nothing fetched, no nesting without end.</summary>
internal static class ClosedXml
{
    /// <summary>A signed alert inside a list needs about 15 levels; gathering the text of very deep ones would eat the memory.</summary>
    public const int MostLevels = 64;

    /// <param name="mostChars">Reading fails beyond so many characters.</param>
    public static XmlReader Open(ReadOnlyMemory<byte> bytes, long mostChars) =>
        XmlReader.Create(StreamOf(bytes), new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = mostChars,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
        });

    /// <summary>The next node; false at the end.</summary>
    /// <exception cref="XmlException">The text is not well-formed, or goes too deep.</exception>
    public static bool Step(this XmlReader reader)
    {
        if (!reader.Read()) return false;
        if (reader.Depth <= MostLevels) return true;
        throw new XmlException($"elements within elements more than {MostLevels} deep", null, reader.Line(), 0);
    }

    public static int Line(this XmlReader reader) => Math.Max(((IXmlLineInfo)reader).LineNumber, 1);

    /// <summary>What reading that failed with this has found out.</summary>
    public static ReadFault FaultOf(Exception error) => error is XmlException xml
        ? ReadFault.At(Math.Max(xml.LineNumber, 1), $"not well-formed XML, or XML with a DTD: {xml.Message}")
        : ReadFault.At(1, $"the XML cannot be decoded: {error.Message}");

    /// <summary>Exceptions by which a reader of XML says that the bytes are at fault.</summary>
    public static bool IsFaultOfBytes(Exception error) =>
        error is XmlException or ArgumentException or NotSupportedException or InvalidOperationException;

    private static MemoryStream StreamOf(ReadOnlyMemory<byte> bytes) =>
        MemoryMarshal.TryGetArray(bytes, out var part)
            ? new MemoryStream(part.Array!, part.Offset, part.Count, writable: false)
            : new MemoryStream(bytes.ToArray(), writable: false);
}
