using PdfSharp.Drawing;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>Draws marks on paper: black, greys and patterns.</summary>
internal sealed class PdfPen(XGraphics paper)
{
    private const double HatchStep = 4;
    private const double DotStep = 3;

    private static readonly XPen Hair = new(XColors.Black, 0.3);

    public void Draw(Mark mark)
    {
        switch (mark)
        {
            case Box box: Draw(box); break;
            case Polygon polygon: Draw(polygon); break;
            case Stroke line: Draw(line); break;
            case Label label: Draw(label); break;
            default: throw new ArgumentOutOfRangeException(nameof(mark), mark, null);
        }
    }

    private void Draw(Box box)
    {
        var area = new XRect(box.X, box.Y, box.Width, box.Height);
        if (Solid(box.Fill) is { } brush) paper.DrawRectangle(brush, area);
        else Pattern(box.Fill, area, () => paper.IntersectClip(area));
        if (box.Edge) paper.DrawRectangle(new XPen(box.Fill == Fill.Ink ? XColors.White : XColors.Black, 0.5), area);
    }

    private void Draw(Polygon polygon)
    {
        XPoint[] corners = [.. polygon.Corners.Select(corner => new XPoint(corner.X, corner.Y))];
        if (Solid(polygon.Fill) is { } brush)
        {
            paper.DrawPolygon(brush, corners, XFillMode.Winding);
            if (polygon.Edge > 0) paper.DrawPolygon(new XPen(XColors.Black, polygon.Edge), corners);
            return;
        }

        var shape = new XGraphicsPath();
        shape.AddPolygon(corners);
        var (left, top) = (corners.Min(corner => corner.X), corners.Min(corner => corner.Y));
        var area = new XRect(left, top, corners.Max(corner => corner.X) - left, corners.Max(corner => corner.Y) - top);
        Pattern(polygon.Fill, area, () => paper.IntersectClip(shape));
    }

    private void Draw(Stroke line)
    {
        var pen = new XPen(XColors.Black, line.Width);
        if (line.Dashed) pen.DashStyle = XDashStyle.Dash;
        paper.DrawLine(pen, line.X1, line.Y1, line.X2, line.Y2);
    }

    private void Draw(Label label)
    {
        var format = label.Anchor switch
        {
            Anchor.Middle => XStringFormats.BaseLineCenter,
            Anchor.End => XStringFormats.BaseLineRight,
            _ => XStringFormats.BaseLineLeft,
        };
        paper.DrawString(label.Text, SheetFonts.Of(label.Size, label.Bold), label.OnInk ? XBrushes.White : XBrushes.Black, label.X, label.Y, format);
    }

    private static XSolidBrush? Solid(Fill fill) => fill switch
    {
        Fill.Paper => XBrushes.White,
        Fill.Pale => new(XColor.FromGrayScale(0.86)),
        Fill.Ink => new(XColor.FromGrayScale(0.2)),
        _ => null,
    };

    private void Pattern(Fill fill, XRect area, Action clip)
    {
        if (fill == Fill.None || area.Width <= 0 || area.Height <= 0) return;
        var kept = paper.Save();
        clip();
        if (fill == Fill.Perhaps) Dots(area);
        if (fill is Fill.Night or Fill.Closed) Slant(area, up: true);
        if (fill == Fill.Closed) Slant(area, up: false);
        paper.Restore(kept);
    }

    private void Slant(XRect area, bool up)
    {
        for (var x = area.Left - area.Height; x < area.Right; x += HatchStep)
        {
            var (left, right) = (x, x + area.Height);
            paper.DrawLine(Hair, up ? left : right, area.Bottom, up ? right : left, area.Top);
        }
    }

    private void Dots(XRect area)
    {
        for (var y = area.Top; y < area.Bottom; y += DotStep)
        {
            for (var x = area.Left; x < area.Right; x += DotStep) paper.DrawRectangle(XBrushes.Black, x, y, 0.8, 0.8);
        }
    }
}
