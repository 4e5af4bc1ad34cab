namespace StormClock.Service.Store;

/// <summary>
/// One of the two database files as the engine sees it, made to outlast power loss. The engine itself writes a commit
/// into its log without asking the disk to keep it, and later copies log pages over the data file on the strength of
/// that. So order is made here, with the page layout of LiteDB 5.0.x without a password (the version is pinned, and a
/// test counts the syncs of a commit):
/// <list type="bullet">
/// <item>the pages of a transaction are on the disk before the page that declares it finished is written;</item>
/// <item>that page is on the disk before the write returns, hence before anybody is told;</item>
/// <item>a cut log is cut on the disk before it is filled again, so that old marks never stand among new pages;</item>
/// <item>what a killed process left in the system's cache is on the disk before anything is built upon it.</item>
/// </list>
/// A disk that refuses a write is not told to the engine, because a commit broken off in the middle leaves page buffers
/// behind over which the engine's finalizer throws, and that ends the process some time later. The engine is left to
/// believe that it has written, nothing more goes to either file, and the owner looks at <see cref="DiskTrouble"/> before
/// it acknowledges anything.
/// </summary>
internal sealed class DurableStream : Stream
{
    private const int PageBytes = 8192;

    /// <summary>Where a page of the log says whether it is the last of a finished transaction.</summary>
    private const int FinishedMarkAt = 18;

    private readonly Stream file;
    private readonly Action sync;
    private readonly DiskTrouble trouble;
    private readonly bool isLog;

    /// <param name="file">The unbuffered file; owned by this stream from now on.</param>
    /// <param name="sync">Returns when everything written to the file is on the disk.</param>
    /// <param name="trouble">Shared by both files.</param>
    /// <param name="isLog">Whether this is the log, whose pages carry the commit mark.</param>
    public DurableStream(Stream file, Action sync, DiskTrouble trouble, bool isLog)
    {
        this.file = file;
        this.sync = sync;
        this.trouble = trouble;
        this.isLog = isLog;
        sync();
    }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => file.Length;

    public override long Position
    {
        get => file.Position;
        set => file.Position = value;
    }

    /// <summary>Opens or creates the file; throws IOException where the system does.</summary>
    public static DurableStream Open(string path, DiskTrouble trouble, bool isLog)
    {
        // The engine writes whole pages; a second buffer would only hide what has reached the system.
        var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 1);
        try
        {
            return new DurableStream(file, () => file.Flush(flushToDisk: true), trouble, isLog);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        // What the engine believes to have written is not there to be read.
        trouble.ThrowIfAny();
        return file.Read(buffer, offset, count);
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        var finishesTransaction = isLog && count == PageBytes && buffer[offset + FinishedMarkAt] != 0;
        trouble.Catch(() =>
        {
            if (finishesTransaction) sync();
            file.Write(buffer, offset, count);
            if (finishesTransaction) sync();
        });
    }

    public override void Flush() => trouble.Catch(sync);

    public override long Seek(long offset, SeekOrigin origin) => file.Seek(offset, origin);

    public override void SetLength(long value) => trouble.Catch(() =>
    {
        file.SetLength(value);
        sync();
    });

    protected override void Dispose(bool disposing)
    {
        if (disposing) file.Dispose();
        base.Dispose(disposing);
    }
}
