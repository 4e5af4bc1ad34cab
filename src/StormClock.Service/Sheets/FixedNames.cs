using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace StormClock.Service.Sheets;

/// <summary>
/// The PDF library names files and parts of fonts at random each time. Here they get fixed names of the same length, made
/// from the rest of the file, so that the same sheet always has the same bytes and every offset in it still holds.
/// </summary>
internal static partial class FixedNames
{
    public static byte[] In(byte[] pdf)
    {
        // Latin-1 has a character for each byte, and gives each byte back.
        var text = Encoding.Latin1.GetString(pdf);
        var fonts = FontPart().Matches(text).Select(match => match.Value).Distinct().ToList();
        text = FontPart().Replace(text, match => $"SHEET{(char)('A' + fonts.IndexOf(match.Value))}");
        var unnamed = Uuid().Replace(FileId().Replace(text, match => new string('0', match.Length)), match => new string('0', match.Length));
        var name = new Guid(SHA256.HashData(Encoding.Latin1.GetBytes(unnamed)).AsSpan(0, 16));
        text = FileId().Replace(text, $"{name:N}".ToUpperInvariant());
        return Encoding.Latin1.GetBytes(Uuid().Replace(text, $"{name:D}"));
    }

    /// <summary>The mark of a part of a font (PDF 1.7, 9.6.4): six capitals and a plus sign.</summary>
    [GeneratedRegex(@"(?<=/(FontName|BaseFont)/)[A-Z]{6}(?=\+)")]
    private static partial Regex FontPart();

    [GeneratedRegex(@"(?<=/ID\[<([0-9A-F]{32}><)?)[0-9A-F]{32}(?=>)")]
    private static partial Regex FileId();

    [GeneratedRegex("(?<=uuid:)[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")]
    private static partial Regex Uuid();
}
