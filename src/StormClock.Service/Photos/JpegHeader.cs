using System.Buffers.Binary;

namespace StormClock.Service.Photos;

/// <summary>The frame header of a JPEG file (ITU-T T.81, annex B).</summary>
internal static class JpegHeader
{
    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes is [0xFF, 0xD8, 0xFF, ..];

    /// <summary>Goes from segment to segment up to the frame header; null when that does not come before the picture's data.</summary>
    public static PhotoHeader? Read(ReadOnlySpan<byte> bytes)
    {
        if (!Begins(bytes)) return null;
        var at = 2;
        while (at + 4 <= bytes.Length && bytes[at] == 0xFF)
        {
            var marker = bytes[at + 1];
            if (marker == 0xFF)
            {
                at++; // any number of these may stand before a marker
                continue;
            }

            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
            if (length < 2 || at + 2 + length > bytes.Length || marker is 0xD9 or 0xDA) return null;
            var segment = bytes.Slice(at + 4, length - 2);
            if (IsFrame(marker)) return marker <= 0xC2 ? Frame(segment) : null;
            at += 2 + length;
        }

        return null;
    }

    private static bool IsFrame(byte marker) => marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);

    private static PhotoHeader? Frame(ReadOnlySpan<byte> segment)
    {
        if (segment.Length < 6 || segment[0] != 8) return null;
        int height = BinaryPrimitives.ReadUInt16BigEndian(segment[1..]), width = BinaryPrimitives.ReadUInt16BigEndian(segment[3..]);
        var components = segment[5];
        if (components is not (1 or 3 or 4) || segment.Length != 6 + 3 * components) return null;

        int samples = 0, mostH = 1, mostV = 1;
        for (var i = 0; i < components; i++)
        {
            int h = segment[7 + 3 * i] >> 4, v = segment[7 + 3 * i] & 15;
            if (h is < 1 or > 4 || v is < 1 or > 4) return null;
            samples += h * v;
            mostH = Math.Max(mostH, h);
            mostV = Math.Max(mostV, v);
        }

        // A file in more than one scan, as any of them may be, is held whole as coefficients of two bytes. They fill whole blocks.
        long cell = (width + 8L * mostH) * (height + 8L * mostV);
        return new(PhotoFormat.Jpeg, width, height, 2 * cell * samples / (mostH * mostV));
    }
}
