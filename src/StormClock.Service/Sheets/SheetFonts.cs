using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace StormClock.Service.Sheets;

/// <summary>
/// The sheet's own font, part of the program, so that a sheet looks the same on a box without any. Licence:
/// <c>Fonts/LICENSE-DejaVu.txt</c>.
/// </summary>
internal sealed class SheetFonts : IFontResolver
{
    private const string Family = "DejaVu Sans Condensed";
    private const string Plain = "DejaVuSansCondensed.ttf";
    private const string Bold = "DejaVuSansCondensed-Bold.ttf";

    /// <summary>The library asks one resolver a process.</summary>
    static SheetFonts() => GlobalFontSettings.FontResolver = new SheetFonts();

    public static XFont Of(double size, bool bold) =>
        new(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode));

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? Bold : Plain);

    public byte[]? GetFont(string faceName)
    {
        using var stream = typeof(SheetFonts).Assembly.GetManifestResourceStream(faceName)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
