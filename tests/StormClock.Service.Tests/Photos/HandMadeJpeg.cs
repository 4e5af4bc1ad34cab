using System.Buffers.Binary;
using System.Text;

namespace StormClock.Service.Tests.Photos;

/// <summary>JPEG files and parts of them put together byte by byte (ITU-T T.81), of any size in few bytes.</summary>
internal static class HandMadeJpeg
{
    /// <summary>What a camera writes, and a marker in it that must never come out again.</summary>
    public const string Secret = "somewhere-at-home";

    /// <summary>A grey or, with three components, colour picture in which every block is coded with the shortest code there is.</summary>
    /// <param name="scans">Null: in one scan, sequential. Else progressive, with so many scans after the first.</param>
    public static byte[] Of(int width, int height, int components = 1, int? scans = null)
    {
        var file = new MemoryStream();
        void Put(params int[] bytes) => file.Write([.. bytes.Select(b => (byte)b)]);
        Put(0xFF, 0xD8, 0xFF, 0xDB, 0, 67, 0);
        Put([.. Enumerable.Repeat(1, 64)]);
        Put(0xFF, scans is null ? 0xC0 : 0xC2, 0, 8 + 3 * components, 8, height >> 8, height & 255, width >> 8, width & 255, components);
        for (var i = 1; i <= components; i++) Put(i, 0x11, 0);

        // One code of one bit in each table: "no difference", and "end of block" or "end of band for 2^14 blocks".
        Put(0xFF, 0xC4, 0, 20, 0x00, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
        Put(0xFF, 0xC4, 0, 20, 0x10, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, scans is null ? 0x00 : 0xE0);

        var blocks = (long)((width + 7) / 8) * ((height + 7) / 8);
        Put(0xFF, 0xDA, 0, 6 + 2 * components, components);
        for (var i = 1; i <= components; i++) Put(i, 0);
        Put(0, scans is null ? 63 : 0, 0);
        file.Write(new byte[(blocks * components * (scans is null ? 2 : 1) + 7) / 8]);
        for (var i = 0; i < scans; i++)
        {
            Put(0xFF, 0xDA, 0, 8, 1, 1 + i % components, 0, 1, 63, 0);
            file.Write(new byte[(blocks + 16383) / 16384 * 2]);
        }

        Put(0xFF, 0xD9);
        return file.ToArray();
    }

    /// <summary>Puts segments right behind the start of a JPEG file.</summary>
    public static byte[] With(byte[] jpeg, params byte[][] segments) => [.. jpeg[..2], .. segments.SelectMany(segment => segment), .. jpeg[2..]];

    public static byte[] Segment(byte marker, params byte[][] content)
    {
        byte[] segment = [0xFF, marker, 0, 0, .. content.SelectMany(part => part)];
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(segment.Length - 2));
        return segment;
    }

    /// <summary>An EXIF segment: which way is up, who took it, and where.</summary>
    public static byte[] Exif(int orientation) => Segment(0xE1, "Exif\0\0"u8.ToArray(), ExifBlock(orientation));

    /// <summary>TIFF, little-endian: a first directory of three entries that leads to the directory of the place, 18.2° north.</summary>
    public static byte[] ExifBlock(int orientation)
    {
        var secret = Encoding.ASCII.GetBytes(Secret + "\0");
        var block = new MemoryStream();
        using var writer = new BinaryWriter(block);
        const int firstAt = 8, placeAt = firstAt + 2 + 3 * 12 + 4, textAt = placeAt + 2 + 2 * 12 + 4, degreesAt = textAt + 18;
        writer.Write("II*\0"u8);
        writer.Write(firstAt);
        writer.Write((short)3);
        Entry(0x0112, 3, 1, orientation); // Orientation
        Entry(0x013B, 2, secret.Length, textAt); // Artist
        Entry(0x8825, 4, 1, placeAt); // GPSInfo
        writer.Write(0);
        writer.Write((short)2);
        Entry(0x0001, 2, 2, 'N'); // GPSLatitudeRef
        Entry(0x0002, 5, 3, degreesAt); // GPSLatitude
        writer.Write(0);
        writer.Write(secret);
        foreach (var (numerator, denominator) in new[] { (18, 1), (12, 1), (3456, 100) })
        {
            writer.Write(numerator);
            writer.Write(denominator);
        }

        return block.ToArray();

        void Entry(ushort tag, short type, int count, int value)
        {
            writer.Write(tag);
            writer.Write(type);
            writer.Write(count);
            writer.Write(value);
        }
    }

    /// <summary>The markers of a JPEG file in order; fails when anything stands between them or behind the end.</summary>
    public static IReadOnlyList<byte> MarkersOf(ReadOnlySpan<byte> jpeg)
    {
        Assert.True(jpeg is [0xFF, 0xD8, .., 0xFF, 0xD9]);
        var markers = new List<byte>();
        var at = 2;
        do
        {
            Assert.Equal(0xFF, jpeg[at]);
            markers.Add(jpeg[at + 1]);
            at += 2 + BinaryPrimitives.ReadUInt16BigEndian(jpeg[(at + 2)..]);
        }
        while (markers[^1] != 0xDA);

        for (; at < jpeg.Length - 2; at++)
        {
            if (jpeg[at] == 0xFF) Assert.Equal(0, jpeg[at + 1]);
        }

        return markers;
    }
}
