using System.Net;
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
        return WebUtility.HtmlDecode(Tag().Replace(text, ""));
    }

    [GeneratedRegex("</?[A-Za-z][^<>]*>", RegexOptions.CultureInvariant)]
    private static partial Regex Tag();
}
