namespace StormClock.Service.Web.Garden;

/// <summary>
/// The body of a request up to a bound. Whoever reads beyond it gets an <see cref="IOException"/> while the rest can still be thrown away;
/// the server's own bound ends the connection instead, and the sender sees no answer.
/// </summary>
internal sealed class BoundedBody(Stream body, long most) : Stream
{
    private long read;

    /// <summary>There was more.</summary>
    public bool IsOver { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        var count = await body.ReadAsync(buffer, cancellationToken);
        read += count;
        if (read <= most) return count;
        IsOver = true;
        throw new IOException("The body is longer than it may be.");
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
