using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace StormClock.Service.Messages;

/// <summary>
/// A message as HTML that needs nothing from elsewhere: no pictures, scripts, tables or style sheets; styles stand inline,
/// because mail programs drop the others. Dark on white, 17 px, one column.
/// </summary>
internal static class HtmlForm
{
    private const string Ink = "color:#16231d";
    private const string Leaf = "color:#0b4a31";

    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Of(string subject, string language, IReadOnlyList<Block> blocks)
    {
        var html = new StringBuilder();
        html.Append(
            $"""
            <!DOCTYPE html>
            <html lang="{Encode(language)}">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light">
            <title>{Encode(subject)}</title>
            </head>
            <body style="margin:0;background:#ffffff;{Ink};font:17px/1.5 system-ui,sans-serif;overflow-wrap:break-word">
            <main style="max-width:36em;margin:0 auto;padding:16px">

            """);
        for (var i = 0; i < blocks.Count; i++) Append(html, blocks[i], first: i == 0);

        return html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static void Append(StringBuilder html, Block block, bool first)
    {
        switch (block)
        {
            case Lead lead when first: Element(html, "h1", "margin:0 0 12px;font-size:22px;line-height:1.3", lead.Text); break;
            case Lead lead: Element(html, "p", "margin:0 0 12px;font-size:19px;font-weight:bold", lead.Text); break;
            case Paragraph paragraph: Element(html, "p", "margin:0 0 12px", paragraph.Text); break;
            case Heading heading:
                Element(html, "h2", $"margin:28px 0 8px;padding-top:8px;border-top:3px solid #0b4a31;font-size:19px;{Leaf}", heading.Text);
                break;
            case Place place: Element(html, "h3", "margin:16px 0 6px;font-size:17px", place.Text); break;
            case Bullets bullets: AppendBullets(html, bullets); break;
            case Entry entry: AppendEntry(html, entry); break;
            case Link link:
                html.Append($"<p style=\"margin:0 0 8px\"><a href=\"{Encode(link.Url)}\" style=\"display:block;padding:12px;border:2px solid #0b4a31;border-radius:4px;{Leaf};font-weight:bold;text-decoration:none\">{Encode(link.Label)}</a></p>\n");
                break;
            case Foot foot: Element(html, "p", "margin:28px 0 0;padding-top:8px;border-top:1px solid #5d6b64", foot.Text); break;
            default: throw new ArgumentOutOfRangeException(nameof(block), block, null);
        }
    }

    private static void AppendBullets(StringBuilder html, Bullets bullets)
    {
        html.Append("<ul style=\"margin:0 0 12px;padding-left:20px\">\n");
        foreach (var line in bullets.Lines) Element(html, "li", "margin:0 0 6px", line);

        html.Append("</ul>\n");
    }

    private static void AppendEntry(StringBuilder html, Entry entry)
    {
        var details = string.Concat(entry.Details.Select(line => $"<br>{Encode(line)}"));
        html.Append($"<p style=\"margin:0 0 12px\"><strong>{entry.Number}. {Encode(entry.Title)}</strong>{details}</p>\n");
    }

    private static void Element(StringBuilder html, string name, string style, string text) =>
        html.Append($"<{name} style=\"{style}\">{Encode(text)}</{name}>\n");

    private static string Encode(string text) => Encoder.Encode(text);
}
