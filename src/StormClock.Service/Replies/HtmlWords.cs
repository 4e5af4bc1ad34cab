using System.Text;
using MimeKit.Text;

namespace StormClock.Service.Replies;

/// <summary>
/// The words of an answer written as HTML, line by line, down to where it begins to quote. Nothing is drawn and nothing fetched.
/// </summary>
internal static class HtmlWords
{
    private static readonly HashSet<HtmlTagId> Breaks =
    [
        HtmlTagId.Br, HtmlTagId.P, HtmlTagId.Div, HtmlTagId.TR, HtmlTagId.LI, HtmlTagId.UL, HtmlTagId.OL, HtmlTagId.Table,
        HtmlTagId.H1, HtmlTagId.H2, HtmlTagId.H3, HtmlTagId.H4, HtmlTagId.H5, HtmlTagId.H6, HtmlTagId.Pre, HtmlTagId.Body,
    ];

    private static readonly HashSet<HtmlTagId> Unseen = [HtmlTagId.Head, HtmlTagId.Style, HtmlTagId.Script, HtmlTagId.Title];

    /// <summary>How mail programs name what they quote, and signatures, in classes and ids.</summary>
    private static readonly string[] Ends = ["quote", "signature", "moz-cite", "divrplyfwdmsg", "appendonsend"];

    public static string Of(string html)
    {
        var text = new StringBuilder();
        var tokens = new HtmlTokenizer(new StringReader(html));
        HtmlTagId? unseen = null;
        while (tokens.ReadNextToken(out var token))
        {
            if (token is HtmlTagToken tag)
            {
                if (unseen is null && !tag.IsEndTag && IsEnd(tag)) break;
                if (Unseen.Contains(tag.Id) && !tag.IsEmptyElement) unseen = tag.IsEndTag ? (unseen == tag.Id ? null : unseen) : unseen ?? tag.Id;
                if (Breaks.Contains(tag.Id)) text.Append('\n');
            }
            else if (unseen is null && token is HtmlDataToken data and not HtmlScriptDataToken)
            {
                text.Append(data.Data.Replace('\r', ' ').Replace('\n', ' '));
            }
        }

        return text.ToString();
    }

    private static bool IsEnd(HtmlTagToken tag) =>
        tag.Id is HtmlTagId.BlockQuote or HtmlTagId.HR
        || tag.Attributes.Any(attribute => attribute.Id is HtmlAttributeId.Class or HtmlAttributeId.Id
            && Ends.Any(end => attribute.Value?.Contains(end, StringComparison.OrdinalIgnoreCase) == true));
}
