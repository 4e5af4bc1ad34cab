using System.Runtime.InteropServices;

namespace StormClock.Service.Store;

/// <summary>Makes the names in a folder durable: a new or renamed file exists after a power loss only when its folder was synced.</summary>
internal static class FolderSync
{
    private const int ReadOnly = 0;

    /// <summary>Returns when the folder's entries are on the disk. Windows journals them itself and has no such call.</summary>
    public static void Now(string folder)
    {
        if (OperatingSystem.IsWindows()) return;
        var handle = Open(folder, ReadOnly);
        if (handle < 0) throw new IOException($"Cannot open the folder {folder} to sync it (errno {Marshal.GetLastPInvokeError()}).");
        try
        {
            if (Sync(handle) != 0) throw new IOException($"Cannot sync the folder {folder} (errno {Marshal.GetLastPInvokeError()}).");
        }
        finally
        {
            _ = Close(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
