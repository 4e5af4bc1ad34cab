using System.Globalization;
using System.Text;
using System.Xml;
using StormClock.Service.Messages;

namespace StormClock.Service.Pictures;

/// <summary>
/// A drawing as SVG: presentation attributes only, so that it obeys a policy without inline styles; no script, nothing from
/// elsewhere, the reader's own font.
/// </summary>
internal static class SvgForm
{
    private const string Ink = "#16231d";

    /// <summary>Of a photo in the background: black in it is then no darker than a light grey, on which ink keeps a contrast of 6 to 1 (D).</summary>
    private const string PhotoOpacity = "0.35";

    /// <param name="id">Begins every id within, unique on the page: letters, digits, hyphens.</param>
    /// <param name="inPage">Stands within HTML; else a file of its own.</param>
    /// <param name="onPaper">On white; else see-through, for what lies below it on a page.</param>
    public static string Of(Drawing drawing, string id, string title, string description, bool inPage, bool onPaper = true)
    {
        var svg = new StringBuilder();
        var names = inPage ? "" : "xmlns=\"http://www.w3.org/2000/svg\" ";
        svg.Append(CultureInfo.InvariantCulture,
            $"""
            <svg {names}role="img" aria-labelledby="{id}-title {id}-desc" width="{Number(drawing.Width)}" height="{Number(drawing.Height)}" viewBox="0 0 {Number(drawing.Width)} {Number(drawing.Height)}" font-family="sans-serif" fill="{Ink}">
            <title id="{id}-title">{Escape(title)}</title>
            <desc id="{id}-desc">{Escape(description)}</desc>
            <defs>
            <pattern id="{id}-night" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M-1 1L1 -1M0 6L6 0M5 7L7 5" stroke="#5d6b64" stroke-width="0.8"/></pattern>
            <pattern id="{id}-closed" width="8" height="8" patternUnits="userSpaceOnUse"><path d="M0 0L8 8M0 8L8 0" stroke="{Ink}" stroke-width="1"/></pattern>
            <pattern id="{id}-perhaps" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="1" cy="1" r="0.8"/></pattern>
            </defs>

            """);
        if (onPaper) svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{Number(drawing.Width)}\" height=\"{Number(drawing.Height)}\" fill=\"#ffffff\"/>\n");
        foreach (var mark in drawing.Marks) svg.Append(Of(mark, id)).Append('\n');
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>A small sign within a line that says the same in words, so that it is passed over when the page is read out. It may hold no patterns.</summary>
    public static string Sign(Drawing drawing)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"sign\" aria-hidden=\"true\" width=\"{Number(drawing.Width)}\" height=\"{Number(drawing.Height)}\" viewBox=\"0 0 {Number(drawing.Width)} {Number(drawing.Height)}\" font-family=\"sans-serif\" fill=\"{Ink}\">");
        foreach (var mark in drawing.Marks) svg.Append(Of(mark, ""));
        return svg.Append("</svg>").ToString();
    }

    private static string Of(Mark mark, string id) => mark switch
    {
        Box box => $"<rect x=\"{Number(box.X)}\" y=\"{Number(box.Y)}\" width=\"{Number(box.Width)}\" height=\"{Number(box.Height)}\" fill=\"{Paint(box.Fill, id)}\"{Edge(box)}/>",
        Polygon polygon => $"<polygon points=\"{string.Join(' ', polygon.Corners.Select(corner => $"{Number(corner.X)},{Number(corner.Y)}"))}\" fill=\"{Paint(polygon.Fill, id)}\"{(polygon.Edge > 0 ? $" stroke=\"{Ink}\" stroke-width=\"{Number(polygon.Edge)}\"" : "")}/>",
        Photograph photo =>
            $"<image x=\"{Number(photo.X)}\" y=\"{Number(photo.Y)}\" width=\"{Number(photo.Width)}\" height=\"{Number(photo.Height)}\" preserveAspectRatio=\"none\" opacity=\"{PhotoOpacity}\" href=\"{Escape(photo.Address)}\"/>",
        Stroke stroke =>
            $"<line x1=\"{Number(stroke.X1)}\" y1=\"{Number(stroke.Y1)}\" x2=\"{Number(stroke.X2)}\" y2=\"{Number(stroke.Y2)}\" stroke=\"{Ink}\" stroke-width=\"{Number(stroke.Width)}\"{(stroke.Dashed ? " stroke-dasharray=\"4 3\"" : "")}/>",
        Label label =>
            $"<text x=\"{Number(label.X)}\" y=\"{Number(label.Y)}\" font-size=\"{Number(label.Size)}\"{(label.Bold ? " font-weight=\"bold\"" : "")}{Align(label.Anchor)}{(label.OnInk ? " fill=\"#ffffff\"" : "")}>{Escape(label.Text)}</text>",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, null),
    };

    private static string Paint(Fill fill, string id) => fill switch
    {
        Fill.None => "none",
        Fill.Paper => "#ffffff",
        Fill.Pale => "#dfe5e1",
        Fill.Ink => "#0b4a31",
        Fill.Night => $"url(#{id}-night)",
        Fill.Closed => $"url(#{id}-closed)",
        Fill.Perhaps => $"url(#{id}-perhaps)",
        _ => throw new ArgumentOutOfRangeException(nameof(fill), fill, null),
    };

    /// <summary>Dark surfaces are parted by paper, the others by ink.</summary>
    private static string Edge(Box box) => box.Edge ? $" stroke=\"{(box.Fill == Fill.Ink ? "#ffffff" : Ink)}\" stroke-width=\"0.7\"" : "";

    private static string Align(Anchor anchor) => anchor switch
    {
        Anchor.Middle => " text-anchor=\"middle\"",
        Anchor.End => " text-anchor=\"end\"",
        _ => "",
    };

    private static string Number(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);

    /// <summary>Fit for element content and for XML as such, which knows no control characters.</summary>
    private static string Escape(string text) =>
        System.Security.SecurityElement.Escape(string.Concat(Plain.Line(text).EnumerateRunes().Where(rune => !rune.IsBmp || XmlConvert.IsXmlChar((char)rune.Value))));
}
