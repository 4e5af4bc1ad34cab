using System.Collections.Concurrent;
using LiteDB;

namespace StormClock.Service.Store;

/// <summary>
/// The one owner of the database. Everything happens on one thread of its own, in the order of asking: writers cannot
/// block each other, a transaction never changes threads, and a read sees every write acknowledged before it.
/// </summary>
public sealed class StormStore : IDisposable
{
    static StormStore() => EngineFinalizers.Guard();

    private const int QueueLength = 256;

    /// <summary>The log is folded into the data file when it has grown by so much, so that a small disk is not filled by it.</summary>
    private const long FoldEveryBytes = 1 << 20;

    private static readonly TimeSpan IdleBeforeFolding = TimeSpan.FromSeconds(5);

    private readonly IDisposable? folderLock;
    private readonly Func<StoreStreams> openStreams;
    private readonly BlockingCollection<Action> queue = [];
    private readonly SemaphoreSlim room = new(QueueLength);
    private readonly Thread owner;
    private StoreFile? file;
    private bool logHasPages;
    private long foldAtBytes = FoldEveryBytes;
    private int disposed;

    /// <summary>For tests with streams of their own; <see cref="Open"/> is the way for everybody else.</summary>
    internal StormStore(Func<StoreStreams> openStreams, IDisposable? folderLock = null)
    {
        this.openStreams = openStreams;
        this.folderLock = folderLock;
        file = StoreFile.Open(openStreams);
        owner = new Thread(RunQueue) { Name = "store", IsBackground = true };
        owner.Start();
    }

    /// <summary>
    /// Takes the folder, creating it where needed, and recovers its database. Throws <see cref="StoreInUseException"/>,
    /// <see cref="StoreTooNewException"/>, or the system's IOException.
    /// </summary>
    public static StormStore Open(string folder)
    {
        StoreFile.CreateFolder(folder);
        var folderLock = StoreLock.Take(folder);
        try
        {
            StoreFile.Create(folder);
            return new StormStore(() => StoreFile.Streams(folder), folderLock);
        }
        catch
        {
            folderLock.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Runs the function inside one transaction; the task completes when its changes are on the disk. When the function
    /// throws, nothing of it is kept and the task fails with the same exception; <see cref="StoreUnavailableException"/>
    /// when the disk fails. The function must be short, harmless to repeat, and do nothing but compute and use the store.
    /// </summary>
    /// <param name="cancellation">Honoured until the function begins.</param>
    public Task<T> WriteAsync<T>(Func<StoreTransaction, T> work, CancellationToken cancellation = default) =>
        OnOwnerAsync(() => Write(work), cancellation);

    /// <inheritdoc cref="WriteAsync{T}"/>
    public Task WriteAsync(Action<StoreTransaction> work, CancellationToken cancellation = default) =>
        WriteAsync(
            transaction =>
            {
                work(transaction);
                return true;
            },
            cancellation);

    /// <summary>
    /// Runs the function on one consistent state. What it returns must not depend on the reader any more (lists, not
    /// deferred queries). Throws <see cref="StoreUnavailableException"/> when the disk fails.
    /// </summary>
    public T Read<T>(Func<StoreReader, T> work) => OnOwnerAsync(() => ReadNow(work), CancellationToken.None).GetAwaiter().GetResult();

    /// <summary>
    /// Writes a whole copy of the database, replacing the file at the path only when the copy is complete and on the
    /// disk. To restore, put it into an empty data folder under the name <c>stormclock.db</c>. Fails with the system's
    /// IOException when the target cannot be written.
    /// </summary>
    public Task BackupAsync(string path, CancellationToken cancellation = default) =>
        OnOwnerAsync(
            () =>
            {
                var open = Guarded(current =>
                {
                    current.FoldLog();
                    return current;
                });
                Backup(open, Path.GetFullPath(path));
                return true;
            },
            cancellation);

    /// <summary>Finishes what is queued, folds the log into the data file and lets go of the folder.</summary>
    public void Dispose()
    {
        if (Interlocked.Exchange(ref disposed, 1) != 0) return;
        queue.CompleteAdding();
        owner.Join();
        queue.Dispose();
        folderLock?.Dispose();
    }

    private async Task<T> OnOwnerAsync<T>(Func<T> work, CancellationToken cancellation)
    {
        if (Thread.CurrentThread == owner) throw new InvalidOperationException("The store was asked from inside one of its own functions; use the transaction at hand.");
        await room.WaitAsync(cancellation).ConfigureAwait(false);
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        Enqueue(() =>
        {
            room.Release();
            if (cancellation.IsCancellationRequested)
            {
                done.SetCanceled(cancellation);
                return;
            }

            try
            {
                done.SetResult(work());
            }
            catch (Exception e)
            {
                done.SetException(e);
            }
        });
        return await done.Task.ConfigureAwait(false);
    }

    private void Enqueue(Action action)
    {
        try
        {
            queue.Add(action);
        }
        catch (InvalidOperationException)
        {
            // Whoever waits behind must learn it too.
            room.Release();
            throw new ObjectDisposedException(nameof(StormStore));
        }
    }

    private void RunQueue()
    {
        while (!queue.IsCompleted)
        {
            if (queue.TryTake(out var action, logHasPages ? IdleBeforeFolding : Timeout.InfiniteTimeSpan))
            {
                action();
                if (file?.LogBytes >= foldAtBytes) FoldLog();
            }
            else if (!queue.IsCompleted)
            {
                FoldLog();
            }
        }

        FoldLog();
        Close();
    }

    private T Write<T>(Func<StoreTransaction, T> work) => Guarded(open =>
    {
        var database = open.Database;
        if (!database.BeginTrans()) throw new InvalidOperationException("A transaction was left open.");
        logHasPages = true;
        var transaction = new StoreTransaction(database);
        T result;
        try
        {
            result = work(transaction);
        }
        catch (Exception e) when (!IsDiskTrouble(e))
        {
            RollBack(database);
            throw;
        }
        finally
        {
            transaction.End();
        }

        // False means that the transaction had ended before: the work caught an exception of the store and went on.
        if (!Commit(database)) throw new InvalidOperationException("The transaction had ended before its commit.");
        return result;
    });

    /// <summary>A commit that the engine breaks off for any reason leaves it in no state to go on with.</summary>
    private bool Commit(LiteDatabase database)
    {
        try
        {
            return database.Commit();
        }
        catch (Exception e) when (!IsDiskTrouble(e))
        {
            Close();
            throw;
        }
    }

    /// <summary>The caller hears why its function failed, and not what failed in undoing it.</summary>
    private void RollBack(LiteDatabase database)
    {
        try
        {
            database.Rollback();
        }
        catch (Exception)
        {
            Close();
        }
    }

    private T ReadNow<T>(Func<StoreReader, T> work) => Guarded(open =>
    {
        var reader = new StoreReader(open.Database);
        try
        {
            return work(reader);
        }
        finally
        {
            reader.End();
        }
    });

    /// <summary>After disk trouble the engine serves nothing any more, not even reads, so the files are opened anew at the next use.</summary>
    private T Guarded<T>(Func<StoreFile, T> use)
    {
        try
        {
            var open = file ??= StoreFile.Open(openStreams);
            try
            {
                return use(open);
            }
            finally
            {
                // Before anything is acknowledged, and before an error of the engine that only follows from it is told.
                open.ThrowIfTrouble();
            }
        }
        catch (Exception e) when (IsDiskTrouble(e))
        {
            Close();
            throw new StoreUnavailableException($"the data folder cannot be written or read ({e.Message}); free space or mend the disk, StormClock tries again by itself.", e);
        }
    }

    private static bool IsDiskTrouble(Exception e) =>
        e is IOException or ObjectDisposedException or UnauthorizedAccessException
        || (e is LiteException lite && lite.ErrorCode is LiteException.INVALID_DATAFILE_STATE or LiteException.ENGINE_DISPOSED);

    private static void Backup(StoreFile open, string path)
    {
        var folder = Path.GetDirectoryName(path)!;
        Directory.CreateDirectory(folder);
        var draft = path + ".part";
        using (var copy = new FileStream(draft, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            open.CopyTo(copy);
            copy.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
        FolderSync.Now(folder);
    }

    /// <summary>
    /// Keeps the log short in a service that runs for months; on its own, so that nobody's write or read fails with it.
    /// Without room for it the log grows on, and it is tried again when that has grown as much again or after a pause.
    /// Whatever goes wrong, the log keeps everything, and the next use meets the trouble and tells it.
    /// </summary>
    private void FoldLog()
    {
        logHasPages = false;
        foldAtBytes = (file?.LogBytes ?? 0) + FoldEveryBytes;
        try
        {
            file?.FoldLog();
            foldAtBytes = FoldEveryBytes;
        }
        catch (Exception)
        {
            Close();
        }
    }

    /// <summary>Trouble in closing is of no interest: what was acknowledged is in the log or the data file.</summary>
    private void Close()
    {
        try
        {
            file?.Dispose();
        }
        catch (Exception)
        {
        }
        finally
        {
            file = null;
        }
    }
}
