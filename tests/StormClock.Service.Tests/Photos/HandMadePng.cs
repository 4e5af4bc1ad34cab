using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace StormClock.Service.Tests.Photos;

/// <summary>PNG files put together chunk by chunk (ISO/IEC 15948).</summary>
internal static class HandMadePng
{
    private static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>A picture of that size and no more than its header and <paramref name="rows"/> rows of zeros.</summary>
    public static byte[] Of(int width, int height, byte depth = 8, bool interlaced = false, int rows = 0)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = depth;
        header[9] = 6; // red, green, blue, opacity
        header[12] = (byte)(interlaced ? 1 : 0);
        var data = new MemoryStream();
        using (var packed = new ZLibStream(data, CompressionLevel.Fastest, leaveOpen: true)) packed.Write(new byte[rows * (1 + 4 * width * depth / 8)]);
        return [.. Signature, .. Chunk("IHDR", header), .. Chunk("IDAT", data.ToArray()), .. Chunk("IEND", [])];
    }

    /// <summary>Puts chunks behind the header of a PNG file.</summary>
    public static byte[] With(byte[] png, params byte[][] chunks) => [.. png[..33], .. chunks.SelectMany(chunk => chunk), .. png[33..]];

    public static byte[] Chunk(string type, byte[] content)
    {
        byte[] chunk = [0, 0, 0, 0, .. Encoding.ASCII.GetBytes(type), .. content, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(chunk, content.Length);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(chunk.Length - 4), Crc(chunk.AsSpan(4, content.Length + 4)));
        return chunk;
    }

    /// <summary>Makes the checks of all chunks right again, as far as the file can be followed.</summary>
    public static void MendChecks(Span<byte> png)
    {
        for (var at = 8; at + 12 <= png.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(png[at..]);
            if (length < 0 || length > png.Length - at - 12) return;
            BinaryPrimitives.WriteUInt32BigEndian(png[(at + 8 + length)..], Crc(png.Slice(at + 4, length + 4)));
            at += length + 12;
        }
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = ~0u;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++) crc = crc >> 1 ^ 0xEDB88320 & (uint)-(int)(crc & 1);
        }

        return ~crc;
    }
}
