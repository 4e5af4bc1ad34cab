using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace StormClock.Core.Formats;

/// <summary>Cuts a bulletin out of the page it is shown on.</summary>
internal static partial class PreText
{
    /// <summary>The first preformatted text of some HTML, without tags and with its entities decoded; null when there is none.</summary>
    public static string? Of(string html)
    {
        var tag = html.IndexOf("<pre", StringComparison.OrdinalIgnoreCase);
        var begin = tag < 0 ? -1 : html.IndexOf('>', tag);
        if (begin < 0) return null;
        var end = html.IndexOf("</pre", begin, StringComparison.OrdinalIgnoreCase);
        var text = end < 0 ? html[(begin + 1)..] : html[(begin + 1)..end];
        return Entity().Replace(Tag().Replace(text, ""), Decoded);
    }

    /// <summary>What is no entity known here stays as it is written.</summary>
    private static string Decoded(Match entity) => entity.Groups["name"].Value switch
    {
        "amp" => "&",
        "lt" => "<",
        "gt" => ">",
        "quot" => "\"",
        "apos" => "'",
        "nbsp" => " ",
        ['#', 'x' or 'X', .. var hex] => OfNumber(hex, NumberStyles.AllowHexSpecifier) ?? entity.Value,
        ['#', .. var number] => OfNumber(number, NumberStyles.None) ?? entity.Value,
        _ => entity.Value,
    };

    private static string? OfNumber(string digits, NumberStyles style) =>
        uint.TryParse(digits, style, CultureInfo.InvariantCulture, out var number) && Rune.IsValid(number) ? new Rune(number).ToString() : null;

    [GeneratedRegex("&(?<name>#?[A-Za-z0-9]{1,8});", RegexOptions.CultureInvariant)]
    private static partial Regex Entity();

    [GeneratedRegex("</?[A-Za-z][^<>]*>", RegexOptions.CultureInvariant)]
    private static partial Regex Tag();
}
