namespace StormClock.Service.Feeds.Web;

/// <summary>Reads an answer to its end, or as far as it may go: a few bytes can unfold into gigabytes.</summary>
internal static class BoundedBody
{
    /// <summary>Null when there is more than allowed; no more than that is ever held.</summary>
    public static async Task<byte[]?> ReadAsync(HttpContent content, int mostBytes, CancellationToken cancellation)
    {
        await using var body = await content.ReadAsStreamAsync(cancellation);
        using var kept = new MemoryStream();
        var buffer = new byte[32 * 1024];
        while (await body.ReadAsync(buffer, cancellation) is var read and > 0)
        {
            if (kept.Length + read > mostBytes) return null;
            kept.Write(buffer, 0, read);
        }

        return kept.ToArray();
    }
}
