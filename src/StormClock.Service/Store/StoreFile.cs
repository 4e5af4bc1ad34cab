using LiteDB;
using LiteDB.Engine;

namespace StormClock.Service.Store;

/// <summary>The data file, the log it is recovered from, and whether the disk has refused either.</summary>
internal sealed record StoreStreams(Stream Data, Stream Log, DiskTrouble Trouble) : IDisposable
{
    public void Dispose()
    {
        Data.Dispose();
        Log.Dispose();
    }
}

/// <summary>
/// The database open in the engine. Not thread-safe: <see cref="StormStore"/> alone uses it, on one thread.
/// </summary>
internal sealed class StoreFile : IDisposable
{
    public const string DataName = "stormclock.db";
    public const string LogName = "stormclock-log.db";

    private readonly StoreStreams streams;

    private StoreFile(StoreStreams streams, LiteDatabase database)
    {
        this.streams = streams;
        Database = database;
    }

    public LiteDatabase Database { get; }

    /// <summary>Creates the data folder durably where it is missing.</summary>
    public static void CreateFolder(string folder)
    {
        if (Directory.Exists(folder)) return;
        Directory.CreateDirectory(folder);
        FolderSync.Now(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)))!);
    }

    /// <summary>Creates an empty database in the folder, unless there is one; a power loss leaves either none or a whole one.</summary>
    public static void Create(string folder)
    {
        var path = Path.Combine(folder, DataName);
        if (File.Exists(path)) return;

        // A database half written under its own name could never be opened again, so it gets its name when it is whole.
        var draft = path + ".new";
        File.Delete(draft);
        var trouble = new DiskTrouble();
        Open(new StoreStreams(DurableStream.Open(draft, trouble, isLog: false), new MemoryStream(), trouble), foldLog: true).Dispose();
        File.Move(draft, path);
        FolderSync.Now(folder);
    }

    /// <summary>The two files of a folder on durable streams; creates the log where it is missing.</summary>
    public static StoreStreams Streams(string folder)
    {
        var trouble = new DiskTrouble();
        var data = DurableStream.Open(Path.Combine(folder, DataName), trouble, isLog: false);
        try
        {
            var streams = new StoreStreams(data, DurableStream.Open(Path.Combine(folder, LogName), trouble, isLog: true), trouble);
            FolderSync.Now(folder);
            return streams;
        }
        catch
        {
            data.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Opens the database, recovers what the log holds and folds it into the data file. Where the disk is too full for
    /// the folding, the log stays as it is: reading must go on.
    /// </summary>
    public static StoreFile Open(Func<StoreStreams> open)
    {
        try
        {
            return Open(open(), foldLog: true);
        }
        catch (IOException)
        {
            return Open(open(), foldLog: false);
        }
    }

    private static StoreFile Open(StoreStreams streams, bool foldLog)
    {
        StoreFile? file = null;
        try
        {
            file = new StoreFile(streams, new LiteDatabase(new LiteEngine(new EngineSettings
            {
                DataStream = streams.Data,
                LogStream = streams.Log,
                // Ids and tokens differ by case; the default would fold it, by the machine's culture at that.
                Collation = new Collation("/Ordinal"),
            })));
            Schema.Ensure(file.Database);
            file.ThrowIfTrouble();
            if (foldLog) file.FoldLog();
            return file;
        }
        catch
        {
            if (file is null) streams.Dispose();
            else file.Dispose();
            throw;
        }
    }

    /// <summary>Throws the disk's refusal, where there was one since the opening: nothing since then can be relied on.</summary>
    public void ThrowIfTrouble() => streams.Trouble.ThrowIfAny();

    /// <summary>Size of what has not yet been folded into the data file.</summary>
    public long LogBytes => streams.Log.Length;

    /// <summary>Copies the log into the data file and empties it; where that fails, the log still holds everything.</summary>
    public void FoldLog()
    {
        Database.Checkpoint();
        ThrowIfTrouble();
    }

    /// <summary>A whole copy, given that the log has just been folded: it is empty then and the data file alone is the database.</summary>
    public void CopyTo(Stream target)
    {
        streams.Data.Position = 0;
        streams.Data.CopyTo(target);
    }

    /// <summary>Closes the engine, then the files, which the engine leaves open; the files are closed even when the engine cannot.</summary>
    public void Dispose()
    {
        try
        {
            Database.Dispose();
        }
        finally
        {
            streams.Dispose();
        }
    }
}
