using SkiaSharp;

namespace StormClock.Service.Photos;

/// <summary>
/// From the bytes of a picture to a new one. The only file that knows SkiaSharp: its native library, some 12 MB, is loaded when this
/// is first called.
/// </summary>
internal static class PhotoDrawing
{
    private static readonly SKSamplingOptions Smooth = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    /// <returns>Null when the bytes are not the whole of the picture that the header claims.</returns>
    public static Photo? Draw(ReadOnlySpan<byte> upload, PhotoHeader header)
    {
        using var data = SKData.CreateCopy(upload);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat != FormatOf(header) || codec.Info.Width != header.WidthPx || codec.Info.Height != header.HeightPx) return null;

        using var upright = Upright(codec);
        if (upright is null) return null;
        using var thumbnail = Scaled(upright, PhotoLimits.ThumbnailPx);
        return new(Encoded(upright), upright.Width, upright.Height, Encoded(thumbnail));
    }

    private static SKEncodedImageFormat FormatOf(PhotoHeader header) => header.Format switch
    {
        PhotoFormat.Jpeg => SKEncodedImageFormat.Jpeg,
        PhotoFormat.Png => SKEncodedImageFormat.Png,
        _ => SKEncodedImageFormat.Webp,
    };

    private static SKBitmap? Upright(SKCodec codec)
    {
        using var decoded = Decoded(codec);
        if (decoded is null) return null;
        using var scaled = Scaled(decoded, PhotoLimits.LongerSidePx);
        return Turned(scaled, codec.EncodedOrigin);
    }

    /// <summary>At the smallest size at which the decoder itself gives all the pixels that are kept.</summary>
    private static SKBitmap? Decoded(SKCodec codec)
    {
        var size = Enumerable.Range(1, 8).Select(eighths => codec.GetScaledDimensions(eighths / 8f))
            .FirstOrDefault(size => Math.Max(size.Width, size.Height) >= PhotoLimits.LongerSidePx, codec.Info.Size);
        var bitmap = new SKBitmap();
        if (bitmap.TryAllocPixels(new(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb()))
            && codec.GetPixels(bitmap.Info, bitmap.GetPixels()) == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        return null;
    }

    /// <summary>A copy, never larger than what it is made from.</summary>
    private static SKBitmap Scaled(SKBitmap bitmap, int longerSidePx)
    {
        var longer = Math.Max(bitmap.Width, bitmap.Height);
        var part = Math.Min(1, longerSidePx / (double)longer);
        var scaled = new SKBitmap(bitmap.Info.WithSize(Side(bitmap.Width * part), Side(bitmap.Height * part)));
        using var from = bitmap.PeekPixels();
        using var to = scaled.PeekPixels();
        from.ScalePixels(to, Smooth);
        return scaled;

        static int Side(double px) => Math.Max(1, (int)Math.Round(px));
    }

    /// <summary>On white, where it is transparent; without a colour space, so that no profile is written.</summary>
    private static SKBitmap Turned(SKBitmap bitmap, SKEncodedOrigin origin)
    {
        var (width, height) = origin >= SKEncodedOrigin.LeftTop ? (bitmap.Height, bitmap.Width) : (bitmap.Width, bitmap.Height);
        var turned = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(turned);
        using var pixels = bitmap.PeekPixels();
        using var image = SKImage.FromPixels(pixels);
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(ToUpright(origin, width, height));
        canvas.DrawImage(image, 0, 0, SKSamplingOptions.Default);
        return turned;
    }

    /// <summary>The eight values of the EXIF tag Orientation, named by where the first row and the first column are to be seen.</summary>
    private static SKMatrix ToUpright(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static byte[] Encoded(SKBitmap bitmap)
    {
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(new SKJpegEncoderOptions(PhotoLimits.JpegQuality));
        return data?.ToArray() ?? throw new InvalidOperationException("A drawn picture could not be written as JPEG.");
    }
}
