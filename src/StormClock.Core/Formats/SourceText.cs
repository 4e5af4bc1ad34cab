using System.Text;

namespace StormClock.Core.Formats;

/// <summary>Bytes of a text product as lines a person would count.</summary>
internal static class SourceText
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static ReadOnlySpan<byte> Utf8Mark => "\uFEFF"u8;

    /// <summary>
    /// The text: UTF-16 where its mark stands first, else UTF-8 where the bytes are UTF-8, else Latin-1. Null when it is
    /// no text at all (a zero byte).
    /// </summary>
    public static string? Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.Unicode.Preamble)) return Encoding.Unicode.GetString(bytes[2..]);
        if (bytes.StartsWith(Encoding.BigEndianUnicode.Preamble)) return Encoding.BigEndianUnicode.GetString(bytes[2..]);
        if (bytes.StartsWith(Utf8Mark)) bytes = bytes[3..];
        if (bytes.Contains((byte)0)) return null;
        try
        {
            return StrictUtf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    /// <summary>
    /// Lines without their ends and without the padding and transmission marks (SOH, ETX) around them. A line may end
    /// with CR CR LF, as on the old circuits; that is one end, not two.
    /// </summary>
    public static string[] Lines(string text)
    {
        var lines = text.Replace("\r\r\n", "\n", StringComparison.Ordinal).ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i] = lines[i].Trim().Trim('\u0001', '\u0003').Trim();
        }

        return lines;
    }
}
