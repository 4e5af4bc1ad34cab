using System.Buffers;
using System.Buffers.Binary;
using System.IO.Compression;

namespace StormClock.Service.Feeds.Web;

/// <summary>
/// Reads an answer to its end, or as far as it may go: a few bytes can unfold into gigabytes. It is unpacked here and not by the
/// client below, which takes a compressed answer that was cut off for a shorter one.
/// </summary>
internal static class BoundedBody
{
    /// <summary>For the request: the packings understood here.</summary>
    public const string Packings = "gzip, br";

    private const int Step = 32 * 1024;

    /// <summary>Null when there is more than allowed; no more than that is ever held.</summary>
    public static async Task<ReadOnlyMemory<byte>?> ReadAsync(HttpContent content, int mostBytes, CancellationToken cancellation)
    {
        await using var body = await content.ReadAsStreamAsync(cancellation);
        using var kept = new MemoryStream((int)Math.Clamp(content.Headers.ContentLength ?? 0, 0, mostBytes));
        var buffer = new byte[Step];
        while (await body.ReadAsync(buffer, cancellation) is var read and > 0)
        {
            if (kept.Length + read > mostBytes) return null;
            kept.Write(buffer, 0, read);
        }

        var packed = Whole(kept);
        return string.Join(',', content.Headers.ContentEncoding).ToLowerInvariant() switch
        {
            _ when packed.IsEmpty => packed,
            "" or "identity" => packed,
            "gzip" or "x-gzip" => Gunzip(packed, mostBytes),
            "br" => Unbrotli(packed, mostBytes),
            var other => throw new InvalidDataException($"packed as '{other}', which was not asked for"),
        };
    }

    /// <summary>The last four bytes tell the length of the whole (RFC 1952), which an answer cut off does not have.</summary>
    private static ReadOnlyMemory<byte>? Gunzip(ReadOnlyMemory<byte> packed, int mostBytes)
    {
        if (packed.Length < 18) throw new InvalidDataException("cut off");
        var length = BinaryPrimitives.ReadUInt32LittleEndian(packed.Span[^4..]);
        using var gzip = new GZipStream(new MemoryStream(packed.ToArray()), CompressionMode.Decompress);
        using var whole = new MemoryStream((int)Math.Min(length, mostBytes));
        var buffer = new byte[Step];
        while (gzip.Read(buffer) is var read and > 0)
        {
            if (whole.Length + read > mostBytes) return null;
            whole.Write(buffer, 0, read);
        }

        if (length != (uint)whole.Length) throw new InvalidDataException("cut off");
        return Whole(whole);
    }

    private static ReadOnlyMemory<byte>? Unbrotli(ReadOnlyMemory<byte> packed, int mostBytes)
    {
        using var decoder = new BrotliDecoder();
        using var whole = new MemoryStream();
        var buffer = new byte[Step];
        var rest = packed.Span;
        while (true)
        {
            var status = decoder.Decompress(rest, buffer, out var used, out var made);
            if (whole.Length + made > mostBytes) return null;
            whole.Write(buffer, 0, made);
            rest = rest[used..];
            if (status == OperationStatus.Done) return Whole(whole);
            if (status != OperationStatus.DestinationTooSmall) throw new InvalidDataException("cut off or damaged");
        }
    }

    /// <summary>Without another copy: a country's list is large.</summary>
    private static ReadOnlyMemory<byte> Whole(MemoryStream bytes) => bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
}
