using PdfSharp.Drawing;
using PdfSharp.Pdf;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Pictures;
using StormClock.Service.Wording;

namespace StormClock.Service.Sheets;

/// <summary>The plan on paper, complete without power or network (product.md 6).</summary>
public static class PlanSheet
{
    /// <returns>A PDF with its fonts in it; the same bytes for the same arguments.</returns>
    public static byte[] Of(GardenBook book, Decision decision, Instant now, Speech speech) => Print(SheetWriter.Write(book, decision, now, speech), now);

    private static byte[] Print(SheetContent content, Instant now)
    {
        using var document = new PdfDocument();
        document.Info.Title = content.Title;
        document.Info.Creator = "StormClock";
        document.Info.CreationDate = now.ToDateTimeUtc();
        document.Language = content.Speech.Tag;
        foreach (var page in SheetLayout.Pages(content, Measure())) Print(document.AddPage(), page);
        using var bytes = new MemoryStream();
        document.Save(bytes);
        return FixedNames.In(bytes.ToArray());
    }

    private static void Print(PdfPage paper, Drawing page)
    {
        (paper.Width, paper.Height) = (XUnit.FromPoint(page.Width), XUnit.FromPoint(page.Height));
        using var graphics = XGraphics.FromPdfPage(paper);
        var pen = new PdfPen(graphics);
        foreach (var mark in page.Marks) pen.Draw(mark);
    }

    private static Ruler Measure()
    {
        var blank = XGraphics.CreateMeasureContext(new(1, 1), XGraphicsUnit.Point, XPageDirection.Downwards);
        return (text, size, bold) => blank.MeasureString(text, SheetFonts.Of(size, bold)).Width;
    }
}
