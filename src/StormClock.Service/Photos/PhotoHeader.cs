namespace StormClock.Service.Photos;

internal enum PhotoFormat { Jpeg, Png, Webp }

/// <summary>What the first bytes of a picture claim of it.</summary>
/// <param name="DecoderBytes">The most memory that decoding and scaling it takes, as measured (D).</param>
internal sealed record PhotoHeader(PhotoFormat Format, int WidthPx, int HeightPx, long DecoderBytes)
{
    private long Pixels => (long)WidthPx * HeightPx;

    /// <summary>
    /// Reads it before any decoder sees the bytes: a small file may claim a picture that fills the memory, and a decoder that is never
    /// asked cannot be broken.
    /// </summary>
    /// <returns>The header of a picture that may be decoded, or why not.</returns>
    public static (PhotoHeader? Header, PhotoRefusal Refusal) Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty) return (null, PhotoRefusal.Empty);
        if (Foreign(bytes) is { } foreign) return (null, foreign);

        var header = JpegHeader.Read(bytes) ?? PngHeader.Read(bytes) ?? WebpHeader.Read(bytes);
        if (header is null || header.Pixels == 0) return (null, PhotoRefusal.Broken);

        var tooLarge = header.Pixels > PhotoLimits.Pixels || header.DecoderBytes > PhotoLimits.DecoderBytes;
        return tooLarge ? (null, PhotoRefusal.TooManyPixels) : (header, default);
    }

    /// <summary>What is no picture of ours by its first bytes, whatever else may stand further on.</summary>
    private static PhotoRefusal? Foreign(ReadOnlySpan<byte> bytes)
    {
        if (WebpHeader.Moves(bytes)) return PhotoRefusal.Moving;
        if (JpegHeader.Begins(bytes) || PngHeader.Begins(bytes) || WebpHeader.Begins(bytes)) return null;
        return IsHeic(bytes) ? PhotoRefusal.Heic : PhotoRefusal.OtherFormat;
    }

    /// <summary>The brands of ISO/IEC 23008-12 for pictures, from memory (M).</summary>
    private static bool IsHeic(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 12 && bytes[4..8].SequenceEqual("ftyp"u8)
        && (bytes[8..10].SequenceEqual("he"u8) || bytes[8..12].SequenceEqual("mif1"u8) || bytes[8..12].SequenceEqual("msf1"u8));
}
