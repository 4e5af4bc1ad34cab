using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>One thing asked of the disk. A null <paramref name="Bytes"/> with a length is a cut; without one, a sync.</summary>
internal sealed record DiskOp(int File, long Offset, byte[]? Bytes, long? Length)
{
    public bool IsSync => Bytes is null && Length is null;
}

/// <summary>
/// The data file (0) and the log (1) on a disk in memory that remembers everything asked of it, in order. What programs
/// read back is the system's cache: everything written. What a power loss leaves is for <see cref="CrashImages"/> to say.
/// </summary>
internal sealed class SimulatedDisk
{
    private readonly MemoryStream[] contents;
    private int opsUntilDeath = int.MaxValue;

    /// <summary>A disk on which these files are durable.</summary>
    public SimulatedDisk(byte[] data, byte[] log)
    {
        contents = [Filled(data), Filled(log)];
        Start = [data, log];
    }

    public IReadOnlyList<byte[]> Start { get; }

    public List<DiskOp> Ops { get; } = [];

    /// <summary>Bytes that both files together may have; writes beyond it go as far as they fit and fail, as on a full disk.</summary>
    public long Capacity { get; set; } = long.MaxValue;

    /// <summary>An empty database, durable.</summary>
    public static SimulatedDisk WithEmptyDatabase()
    {
        var disk = new SimulatedDisk([], []);
        StoreFile.Open(disk.DurableStreams).Dispose();
        return new SimulatedDisk(disk.Contents(0), disk.Contents(1));
    }

    /// <summary>The files as the product opens them.</summary>
    public StoreStreams DurableStreams()
    {
        var data = Open(0);
        var log = Open(1);
        var trouble = new DiskTrouble();
        return new StoreStreams(
            new DurableStream(data, data.Flush, trouble, isLog: false), new DurableStream(log, log.Flush, trouble, isLog: true), trouble);
    }

    /// <summary>The files as the engine opens them by itself.</summary>
    public StoreStreams PlainStreams() => new(Open(0), Open(1), new DiskTrouble());

    /// <summary>The process dies when so many more things have been asked of the disk; the system and its cache live on.</summary>
    public void KillAfter(int ops) => opsUntilDeath = ops;

    /// <summary>A new process: everything that is open now stays dead.</summary>
    public void Revive() => opsUntilDeath = int.MaxValue;

    public int CountSyncs(int file, int fromOp) => Ops.Skip(fromOp).Count(op => op.IsSync && op.File == file);

    /// <summary>What a program would read from the file now.</summary>
    public byte[] Contents(int file) => contents[file].ToArray();

    private SimulatedFile Open(int file) => new(this, file);

    private void Ask(DiskOp op)
    {
        if (opsUntilDeath-- <= 0)
        {
            opsUntilDeath = 0;
            throw new IOException("the process is dead");
        }

        Ops.Add(op);
        Apply(contents[op.File], op);
    }

    private void Write(int file, long offset, byte[] bytes)
    {
        var other = contents[1 - file].Length;
        var fits = Math.Clamp(Capacity - other - offset, 0, bytes.Length);
        var end = Math.Max(contents[file].Length, offset + bytes.Length);
        if (end + other <= Capacity)
        {
            Ask(new DiskOp(file, offset, bytes, null));
            return;
        }

        if (fits > 0) Ask(new DiskOp(file, offset, bytes[..(int)fits], null));
        throw new IOException("no space left on the simulated disk");
    }

    public static MemoryStream Filled(byte[] bytes)
    {
        var file = new MemoryStream();
        file.Write(bytes);
        return file;
    }

    public static void Apply(MemoryStream file, DiskOp op)
    {
        if (op.Length is { } length) file.SetLength(length);
        if (op.Bytes is null) return;
        file.Position = op.Offset;
        file.Write(op.Bytes);
    }

    private sealed class SimulatedFile(SimulatedDisk disk, int file) : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => true;

        public override bool CanWrite => true;

        public override long Length => disk.contents[file].Length;

        public override long Position { get; set; }

        public override void Flush() => disk.Ask(new DiskOp(file, 0, null, null));

        public override int Read(byte[] buffer, int offset, int count)
        {
            disk.contents[file].Position = Position;
            var read = disk.contents[file].Read(buffer, offset, count);
            Position += read;
            return read;
        }

        public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
        {
            SeekOrigin.Begin => offset,
            SeekOrigin.Current => Position + offset,
            _ => Length + offset,
        };

        public override void SetLength(long value) => disk.Ask(new DiskOp(file, 0, null, value));

        public override void Write(byte[] buffer, int offset, int count)
        {
            disk.Write(file, Position, buffer.AsSpan(offset, count).ToArray());
            Position += count;
        }
    }
}
