using System.Buffers.Binary;

namespace StormClock.Service.Photos;

/// <summary>The first chunk of a WebP file (RFC 9649).</summary>
internal static class WebpHeader
{
    private const int Animated = 0x02;

    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes.Length >= 12 && bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8);

    public static bool Moves(ReadOnlySpan<byte> bytes) => Holds(bytes, "VP8X"u8) && (bytes[20] & Animated) != 0;

    public static PhotoHeader? Read(ReadOnlySpan<byte> bytes)
    {
        if (Holds(bytes, "VP8X"u8)) return Of(1 + UInt24(bytes[24..]), 1 + UInt24(bytes[27..]));
        if (Holds(bytes, "VP8L"u8) && bytes[20] == 0x2F)
        {
            var sides = BinaryPrimitives.ReadUInt32LittleEndian(bytes[21..]);
            return Of(1 + (int)(sides & 0x3FFF), 1 + (int)(sides >> 14 & 0x3FFF));
        }

        if (!Holds(bytes, "VP8 "u8) || !bytes[23..26].SequenceEqual((ReadOnlySpan<byte>)[0x9D, 0x01, 0x2A])) return null;
        return Of(BinaryPrimitives.ReadUInt16LittleEndian(bytes[26..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(bytes[28..]) & 0x3FFF);
    }

    private static bool Holds(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> chunk) => Begins(bytes) && bytes.Length >= 30 && bytes[12..16].SequenceEqual(chunk);

    private static int UInt24(ReadOnlySpan<byte> bytes) => bytes[0] | bytes[1] << 8 | bytes[2] << 16;

    /// <summary>It is scaled while it is decoded; without loss four bytes a pixel are held, and one more for the transparency.</summary>
    private static PhotoHeader Of(int width, int height) => new(PhotoFormat.Webp, width, height, 5L * width * height);
}
