namespace StormClock.Service.Store;

/// <summary>Keeps a second StormClock out of a data folder for as long as it is held; the system lets go when the process dies. A file system without locks (some network shares) cannot keep anybody out.</summary>
internal sealed class StoreLock : IDisposable
{
    public const string FileName = "stormclock.lock";

    private readonly FileStream held;

    private StoreLock(FileStream held) => this.held = held;

    /// <summary>Throws <see cref="StoreInUseException"/> when the folder is held already.</summary>
    public static StoreLock Take(string folder)
    {
        var path = Path.Combine(folder, FileName);
        try
        {
            return new StoreLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException e) when (e.GetType() == typeof(IOException) && File.Exists(path))
        {
            throw new StoreInUseException(folder, e);
        }
    }

    public void Dispose() => held.Dispose();
}
