using SkiaSharp;

namespace StormClock.Service.Tests.Photos;

/// <summary>Pictures drawn by code, as files of each format.</summary>
internal static class DrawnPictures
{
    /// <summary>Side of a block: large enough that a block's middle keeps its colour in any JPEG.</summary>
    public const int BlockPx = 32;

    /// <summary>Two columns of three blocks, each of another colour, in reading order.</summary>
    public static readonly SKColor[] Blocks = [SKColors.Red, SKColors.Lime, SKColors.Blue, SKColors.Black, SKColors.White, SKColors.Yellow];

    public static byte[] OfBlocks(SKEncodedImageFormat format)
    {
        using var bitmap = new SKBitmap(2 * BlockPx, 3 * BlockPx);
        using (var canvas = new SKCanvas(bitmap))
        using (var paint = new SKPaint())
        {
            for (var i = 0; i < Blocks.Length; i++)
            {
                paint.Color = Blocks[i];
                canvas.DrawRect(i % 2 * BlockPx, i / 2 * BlockPx, BlockPx, BlockPx, paint);
            }
        }

        return Written(bitmap, format);
    }

    public static byte[] OfOneColour(int width, int height, SKColor colour, SKEncodedImageFormat format)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(colour);
        return Written(bitmap, format);
    }

    /// <summary>Colours that change from pixel to pixel without order: the data fills much of the file.</summary>
    public static byte[] OfNoise(int width, int height, SKEncodedImageFormat format, int quality = 90)
    {
        using var bitmap = new SKBitmap(width, height);
        var random = new Random(7);
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++) bitmap.SetPixel(x, y, new((uint)random.Next() | 0xFF000000));
        }

        return Written(bitmap, format, quality);
    }

    /// <summary>A JPEG file with a colour profile, as newer phones write it; the colour is given in usual terms.</summary>
    public static byte[] InWideColours(SKColor colour)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(64, 64, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateRgb(SKColorSpaceTransferFn.Srgb, SKColorSpaceXyz.DisplayP3)));
        bitmap.Erase(colour);
        return Written(bitmap, SKEncodedImageFormat.Jpeg);
    }

    /// <param name="quality">Of 100; WebP is without loss at 100.</param>
    public static byte[] Written(SKBitmap bitmap, SKEncodedImageFormat format, int quality = 100)
    {
        using var data = bitmap.Encode(format, quality);
        return data.ToArray();
    }

    public static SKBitmap Open(ReadOnlyMemory<byte> file) => SKBitmap.Decode(file.Span);

    public static bool IsNear(SKColor colour, SKColor expected) =>
        Math.Abs(colour.Red - expected.Red) < 40 && Math.Abs(colour.Green - expected.Green) < 40 && Math.Abs(colour.Blue - expected.Blue) < 40;
}
