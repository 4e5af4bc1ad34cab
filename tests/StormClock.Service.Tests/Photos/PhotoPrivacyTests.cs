using System.Text;
using SkiaSharp;

namespace StormClock.Service.Tests.Photos;

/// <summary>Which way is up is used, and then nothing of what stood beside the pixels is left: least of all where she lives.</summary>
public class PhotoPrivacyTests
{
    private const string TopLeft = "topLeft", TopRight = "topRight", BottomLeft = "bottomLeft", BottomRight = "bottomRight";

    /// <summary>
    /// For each value of Orientation (EXIF 2.3, tag 274, from memory: on which side the first row and the first column are seen) the
    /// corners of the file that are to be seen top left, top right, bottom left and bottom right.
    /// </summary>
    public static TheoryData<int, string[]> Orientations => new()
    {
        { 1, [TopLeft, TopRight, BottomLeft, BottomRight] }, // row top, column left
        { 2, [TopRight, TopLeft, BottomRight, BottomLeft] }, // row top, column right
        { 3, [BottomRight, BottomLeft, TopRight, TopLeft] }, // row bottom, column right
        { 4, [BottomLeft, BottomRight, TopLeft, TopRight] }, // row bottom, column left
        { 5, [TopLeft, BottomLeft, TopRight, BottomRight] }, // row left, column top
        { 6, [BottomLeft, TopLeft, BottomRight, TopRight] }, // row right, column top
        { 7, [BottomRight, TopRight, BottomLeft, TopLeft] }, // row right, column bottom
        { 8, [TopRight, BottomRight, TopLeft, BottomLeft] }, // row left, column bottom
    };

    [Theory, MemberData(nameof(Orientations))]
    public async Task Make_OfEachOrientation_StandsUpright(int orientation, string[] corners)
    {
        var upload = HandMadeJpeg.With(DrawnPictures.OfBlocks(SKEncodedImageFormat.Jpeg), HandMadeJpeg.Exif(orientation));

        var photo = (await PhotoMakerTests.MakeAsync(upload)).Value!;

        var (width, height) = orientation < 5 ? (2 * DrawnPictures.BlockPx, 3 * DrawnPictures.BlockPx) : (3 * DrawnPictures.BlockPx, 2 * DrawnPictures.BlockPx);
        Assert.Equal((width, height), (photo.WidthPx, photo.HeightPx));
        foreach (var file in new[] { photo.Jpeg, photo.Thumbnail })
        {
            using var picture = DrawnPictures.Open(file);
            const int in1 = DrawnPictures.BlockPx / 2;
            var seen = new[] { picture.GetPixel(in1, in1), picture.GetPixel(width - in1, in1), picture.GetPixel(in1, height - in1), picture.GetPixel(width - in1, height - in1) };
            Assert.All(seen.Zip(corners), pair => Assert.True(DrawnPictures.IsNear(pair.First, ColourAt(pair.Second)), $"{pair.First} is not of {pair.Second}"));
        }
    }

    [Fact]
    public async Task Make_OrientationOfAWebp_IsAppliedAndDropped()
    {
        var photo = (await PhotoMakerTests.MakeAsync(WebpWith(HandMadeJpeg.ExifBlock(6)))).Value!;

        Assert.Equal((3 * DrawnPictures.BlockPx, 2 * DrawnPictures.BlockPx), (photo.WidthPx, photo.HeightPx));
        HoldsPixelsOnly(photo.Jpeg.Span);
    }

    [Fact]
    public async Task Make_WithEverythingThatACameraWrites_KeepsPixelsOnly()
    {
        var secret = Encoding.ASCII.GetBytes(HandMadeJpeg.Secret);
        byte[] upload =
        [
            .. HandMadeJpeg.With(
                DrawnPictures.OfBlocks(SKEncodedImageFormat.Jpeg),
                HandMadeJpeg.Exif(6),
                HandMadeJpeg.Segment(0xE1, "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>"u8.ToArray(), secret),
                HandMadeJpeg.Segment(0xE2, "ICC_PROFILE\0\x01\x01"u8.ToArray(), secret),
                HandMadeJpeg.Segment(0xED, "Photoshop 3.0\0"u8.ToArray(), secret),
                HandMadeJpeg.Segment(0xE9, secret),
                HandMadeJpeg.Segment(0xFE, secret)),
            .. "PK\x03\x04"u8, .. secret, // behind the end, as phones put a film there
        ];
        Assert.True(upload.AsSpan().IndexOf(secret) > 0);

        var photo = (await PhotoMakerTests.MakeAsync(upload)).Value!;

        HoldsPixelsOnly(photo.Jpeg.Span);
        HoldsPixelsOnly(photo.Thumbnail.Span);
    }

    [Fact]
    public async Task Make_PngAndWebpWithTexts_KeepPixelsOnly()
    {
        var secret = Encoding.ASCII.GetBytes(HandMadeJpeg.Secret);
        var png = HandMadePng.With(
            DrawnPictures.OfBlocks(SKEncodedImageFormat.Png), HandMadePng.Chunk("tEXt", [.. "Comment\0"u8, .. secret]), HandMadePng.Chunk("eXIf", HandMadeJpeg.ExifBlock(1)));

        HoldsPixelsOnly((await PhotoMakerTests.MakeAsync(png)).Value!.Jpeg.Span);
        HoldsPixelsOnly((await PhotoMakerTests.MakeAsync(WebpWith(HandMadeJpeg.ExifBlock(1)))).Value!.Jpeg.Span);
    }

    /// <summary>A camera's wide colours are turned into the usual ones, and no profile is needed any more.</summary>
    [Fact]
    public async Task Make_InAnotherColourSpace_IsTurnedIntoTheUsualOne()
    {
        var upload = DrawnPictures.InWideColours(new(160, 90, 60));
        Assert.Contains((byte)0xE2, HandMadeJpeg.MarkersOf(upload));

        var photo = (await PhotoMakerTests.MakeAsync(upload)).Value!;

        HoldsPixelsOnly(photo.Jpeg.Span);
        using var picture = DrawnPictures.Open(photo.Jpeg);
        var seen = picture.GetPixel(32, 32);
        Assert.True(Math.Abs(seen.Red - 160) < 6 && Math.Abs(seen.Green - 90) < 6 && Math.Abs(seen.Blue - 60) < 6, $"{seen}");
    }

    /// <summary>A WebP file in its extended form (RFC 9649, 2.7), with a block of EXIF of even length.</summary>
    private static byte[] WebpWith(byte[] exif)
    {
        byte[] picture = DrawnPictures.OfBlocks(SKEncodedImageFormat.Webp)[12..];
        byte[] header = [.. "WEBPVP8X"u8, 10, 0, 0, 0, 0x08, 0, 0, 0, 2 * DrawnPictures.BlockPx - 1, 0, 0, 3 * DrawnPictures.BlockPx - 1, 0, 0];
        byte[] content = [.. header, .. picture, .. "EXIF"u8, .. BitConverter.GetBytes(exif.Length), .. exif];
        return [.. "RIFF"u8, .. BitConverter.GetBytes(content.Length), .. content];
    }

    private static SKColor ColourAt(string corner) => corner switch
    {
        TopLeft => DrawnPictures.Blocks[0],
        TopRight => DrawnPictures.Blocks[1],
        BottomLeft => DrawnPictures.Blocks[4],
        _ => DrawnPictures.Blocks[5],
    };

    /// <summary>JFIF, tables, frame and scan: what a JPEG file cannot do without (ITU-T T.81, table B.1).</summary>
    private static void HoldsPixelsOnly(ReadOnlySpan<byte> jpeg)
    {
        Assert.Subset(new HashSet<byte> { 0xE0, 0xDB, 0xC0, 0xC4, 0xDA }, HandMadeJpeg.MarkersOf(jpeg).ToHashSet());
        var jfif = jpeg.IndexOf("JFIF"u8);
        Assert.Equal(16, jpeg[jfif - 1]); // no picture inside it
        Assert.Equal(-1, jpeg.IndexOf(Encoding.ASCII.GetBytes(HandMadeJpeg.Secret)));
        Assert.Equal(-1, jpeg.IndexOf("Exif"u8));
    }
}
