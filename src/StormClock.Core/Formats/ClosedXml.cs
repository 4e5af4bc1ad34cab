using System.Runtime.InteropServices;
using System.Text;
using System.Text.Unicode;
using System.Xml;

namespace StormClock.Core.Formats;

/// <summary>XML read without doors: no DTD, no entity from elsewhere, nothing fetched, no nesting without end.</summary>
internal static class ClosedXml
{
    /// <summary>A signed alert inside a list needs about 15 levels; gathering the text of very deep ones would eat the memory.</summary>
    public const int MostLevels = 64;

    /// <summary>
    /// Reads bytes in the encoding that their mark tells, else their declaration; where they cannot be of that one, by what
    /// they look like. An alert with a few wrong letters is better than none.
    /// </summary>
    /// <param name="mostChars">Reading fails beyond so many characters.</param>
    public static ReadResult<T> Read<T>(ReadOnlyMemory<byte> bytes, long mostChars, Func<XmlReader, ReadResult<T>> read)
        where T : class
    {
        try
        {
            using var reader = XmlReader.Create(StreamOf(bytes), Settings(mostChars));
            return read(reader);
        }
        catch (Exception error) when (IsFaultOfBytes(error))
        {
            return ReadByContent(bytes, mostChars, read) ?? FaultOf(error);
        }
    }

    private static ReadResult<T>? ReadByContent<T>(ReadOnlyMemory<byte> bytes, long mostChars, Func<XmlReader, ReadResult<T>> read)
        where T : class
    {
        if ((Utf8.IsValid(bytes.Span) && !DeclaresOther(bytes.Span)) || SourceText.Decode(bytes.Span) is not { } text) return null;
        try
        {
            using var reader = XmlReader.Create(new StringReader(text), Settings(mostChars));
            return read(reader);
        }
        catch (Exception error) when (IsFaultOfBytes(error))
        {
            return null;
        }
    }

    /// <summary>Whether an encoding other than UTF-8 is declared.</summary>
    public static bool DeclaresOther(ReadOnlySpan<byte> bytes)
    {
        var head = Encoding.Latin1.GetString(bytes[..Math.Min(bytes.Length, 200)]);
        return head.Contains("encoding", StringComparison.Ordinal) && !head.Contains("utf-8", StringComparison.OrdinalIgnoreCase);
    }

    private static XmlReaderSettings Settings(long mostChars) => new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersInDocument = mostChars,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
    };

    /// <summary>The next node; false at the end.</summary>
    /// <exception cref="XmlException">The text is not well-formed, or goes too deep.</exception>
    public static bool Step(this XmlReader reader)
    {
        if (!reader.Read()) return false;
        if (reader.Depth <= MostLevels) return true;
        throw new XmlException($"elements within elements more than {MostLevels} deep", null, reader.Line(), 0);
    }

    public static int Line(this XmlReader reader) => Math.Max(((IXmlLineInfo)reader).LineNumber, 1);

    private static ReadFault FaultOf(Exception error) => error is XmlException xml
        ? ReadFault.At(Math.Max(xml.LineNumber, 1), $"not well-formed XML, or XML with a DTD: {xml.Message}")
        : ReadFault.At(1, $"the XML cannot be decoded: {error.Message}");

    /// <summary>Exceptions by which a reader of XML says that the bytes are at fault.</summary>
    private static bool IsFaultOfBytes(Exception error) =>
        error is XmlException or ArgumentException or NotSupportedException or InvalidOperationException;

    private static MemoryStream StreamOf(ReadOnlyMemory<byte> bytes) =>
        MemoryMarshal.TryGetArray(bytes, out var part)
            ? new MemoryStream(part.Array!, part.Offset, part.Count, writable: false)
            : new MemoryStream(bytes.ToArray(), writable: false);
}
