using System.Buffers.Binary;

namespace StormClock.Service.Photos;

/// <summary>The first chunk of a PNG file (ISO/IEC 15948).</summary>
internal static class PngHeader
{
    private static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes.StartsWith(Signature);

    public static PhotoHeader? Read(ReadOnlySpan<byte> bytes)
    {
        if (!Begins(bytes) || bytes.Length < 33 || !bytes[12..16].SequenceEqual("IHDR"u8)) return null;
        int width = BinaryPrimitives.ReadInt32BigEndian(bytes[16..]), height = BinaryPrimitives.ReadInt32BigEndian(bytes[20..]);
        if (width < 0 || height < 0) return null;

        // Decoded whole to four bytes a pixel, with a third more for scaling; in an interlaced one all rows wait beside that.
        var pixels = (long)width * height;
        var depth = bytes[24] == 16 ? 2 : 1;
        var waiting = bytes[28] == 0 ? 0 : 4 * depth * pixels;
        return pixels > PhotoLimits.Pixels
            ? new(PhotoFormat.Png, width, height, long.MaxValue)
            : new(PhotoFormat.Png, width, height, 4 * pixels + 4 * pixels / 3 + waiting);
    }
}
