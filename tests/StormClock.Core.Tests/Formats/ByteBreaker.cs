using System.Text;

namespace StormClock.Core.Tests.Formats;

/// <summary>Makes broken inputs out of good ones, the same for the same seed: bits turned, pieces cut out, doubled, swapped between messages, and words set in that readers stumble over.</summary>
internal sealed class ByteBreaker(int seed, IReadOnlyList<byte[]> seeds, int mostBytes)
{
    private static readonly byte[][] Words =
    [
        .. new[]
        {
            "0", "-1", "99999999999999999999", "1e999", "NaN", "null", "[]", "{}", "\"", "\\ud800", "\\u0000", "\u0663\u0664", "\u212a", "\u017f", "\ufeff", "\r\r\n", "\n", "\n\n\n", "\t",
            "<", ">", "<!DOCTYPE a [<!ENTITY b \"c\">]>", "&b;", "&#0;", "]]>", "<a>", "</a>", "{\"a\":", "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
            "$$", "/O.NEW.KTBW.HU.W.1009.220927T2100Z-000000T0000Z/", "/O.", "TXZ000>999-", "000000T0000Z", "993199", "FLZALL-", "LAT...LON 1 2 3", "LAT...LON 99999 99999 0 0 1 1",
            "LOCATION...", "MAXIMUM SUSTAINED WINDS...", "ADVISORY NUMBER", "CENTER LOCATED NEAR", "FORECAST VALID 31/2400Z", "0300 UTC TUE FEB 29 2023", "1200 AM EDT Sun Jan 01 0001",
            "9999-12-31T23:59:59-14:00", "0001-01-01T00:00:00+14:00", "PT99999999H", "/P999D", "wmoUnit:", "mph", "\u0001", "\u0003", "-0", "360", "180", "-180.0", "90.0001",
        }.Select(Encoding.UTF8.GetBytes),
        [0], [0xFF], [0xC0, 0x80], [0xED, 0xA0, 0x80], [0xFF, 0xFE], [0xFE, 0xFF], [0xF4, 0x90, 0x80, 0x80],
    ];

    private readonly Random random = new(seed);

    public byte[] Next()
    {
        if (random.Next(50) == 0) return Noise();
        var bytes = new List<byte>(Pick(seeds));
        if (bytes.Count > mostBytes) bytes.RemoveRange(mostBytes, bytes.Count - mostBytes);
        for (var times = 1 + (int)(-2 * Math.Log(1 - random.NextDouble())); times > 0; times--) Break(bytes);
        return [.. bytes];
    }

    private void Break(List<byte> bytes)
    {
        var at = random.Next(bytes.Count + 1);
        var length = Math.Min(random.Next(1, random.Next(4) == 0 ? 400 : 12), bytes.Count - at);
        switch (random.Next(10))
        {
            case 0 when at < bytes.Count: bytes[at] ^= (byte)(1 << random.Next(8)); break;
            case 1 when at < bytes.Count: bytes[at] = (byte)random.Next(256); break;
            case 2: bytes.RemoveRange(at, length); break;
            case 3: bytes.InsertRange(at, bytes.GetRange(at, length)); break;
            case 4: bytes.InsertRange(at, Pick(Words)); break;
            case 5: bytes.RemoveRange(at, length); bytes.InsertRange(at, Pick(Words)); break;
            case 6 when random.Next(5) == 0: bytes.RemoveRange(at, bytes.Count - at); break;
            case 7: Graft(bytes, at, length); break;
            case 8 when random.Next(20) == 0: Repeat(bytes, at, length); break;
            default: Digit(bytes, at); break;
        }
    }

    /// <summary>A piece of another message.</summary>
    private void Graft(List<byte> bytes, int at, int length)
    {
        var other = Pick(seeds);
        var from = random.Next(other.Length);
        bytes.InsertRange(at, other[from..Math.Min(other.Length, from + Math.Max(length, 20))]);
    }

    /// <summary>One piece over and over, up to the largest size: what takes time with the square of the length shows.</summary>
    private void Repeat(List<byte> bytes, int at, int length)
    {
        if (length == 0) return;
        var piece = bytes.GetRange(at, length);
        var all = new List<byte>();
        while (all.Count < mostBytes - bytes.Count) all.AddRange(piece);
        bytes.InsertRange(at, all);
    }

    /// <summary>The next digit after the place becomes another: numbers that are well written and wrong.</summary>
    private void Digit(List<byte> bytes, int at)
    {
        var digit = bytes.FindIndex(at, one => one is >= (byte)'0' and <= (byte)'9');
        if (digit >= 0) bytes[digit] = (byte)('0' + random.Next(10));
    }

    private byte[] Noise()
    {
        var bytes = new byte[random.Next(300)];
        random.NextBytes(bytes);
        return bytes;
    }

    private T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];
}
