using StormClock.Core;
using StormClock.Service.Wording;

namespace StormClock.Service.Photos;

/// <summary>Makes a photo that may be kept and shown out of whatever somebody sends.</summary>
public static class PhotoMaker
{
    /// <summary>One decode at a time in the process: each may take <see cref="PhotoLimits.DecoderBytes"/>.</summary>
    private static readonly SemaphoreSlim Turn = new(1);

    /// <summary>
    /// Reads an upload up to <see cref="PhotoLimits.UploadBytes"/> and draws it anew. JPEG, PNG and still WebP are taken; only the pixels
    /// and which way is up are used of them. Decoding takes up to some seconds of one core, on the caller's thread.
    /// </summary>
    /// <param name="speech">How whoever sent it is told why it is not taken.</param>
    /// <returns>The photo; one fault that can be shown to its sender otherwise.</returns>
    /// <exception cref="IOException">The upload broke off.</exception>
    public static async Task<ReadResult<Photo>> MakeAsync(Stream upload, Speech speech, CancellationToken cancellation)
    {
        if (await ReadAsync(upload, cancellation) is not { } bytes) return speech.For(PhotoRefusal.TooLarge);

        var (header, refusal) = PhotoHeader.Read(bytes.Span);
        if (header is null) return speech.For(refusal);

        await Turn.WaitAsync(cancellation);
        try
        {
            return PhotoDrawing.Draw(bytes.Span, header) is { } photo ? photo : speech.For(PhotoRefusal.Broken);
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException)
        {
            return speech.For(PhotoRefusal.NotHere);
        }
        catch (Exception)
        {
            // Whatever the library trips over, bytes from outside must not be told from a fault of the service.
            return speech.For(PhotoRefusal.Broken);
        }
        finally
        {
            Turn.Release();
        }
    }

    /// <summary>Null when there is more than may be; no more than that is read.</summary>
    private static async Task<ReadOnlyMemory<byte>?> ReadAsync(Stream upload, CancellationToken cancellation)
    {
        using var read = new MemoryStream();
        var part = new byte[64 << 10];
        while (await upload.ReadAsync(part, cancellation) is > 0 and var count)
        {
            if (read.Length + count > PhotoLimits.UploadBytes) return null;
            read.Write(part, 0, count);
        }

        return read.GetBuffer().AsMemory(0, (int)read.Length);
    }
}
