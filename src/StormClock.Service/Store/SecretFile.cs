namespace StormClock.Service.Store;

/// <summary>Files that hold keys or photos: readable and writable by their owner only.</summary>
internal static class SecretFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>A new file, whole or not at all: a half-written key would make everything signed with it worthless.</summary>
    public static void Write(string path, ReadOnlySpan<byte> content) => Put(path, content, overwrite: false);

    /// <summary>The same in place of a file that may be there.</summary>
    public static void Replace(string path, ReadOnlySpan<byte> content) => Put(path, content, overwrite: true);

    private static void Put(string path, ReadOnlySpan<byte> content, bool overwrite)
    {
        var unfinished = path + ".part";
        File.Delete(unfinished);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerOnly;

        using (var file = new FileStream(unfinished, options))
        {
            file.Write(content);
            file.Flush(flushToDisk: true);
        }

        File.Move(unfinished, path, overwrite);
        FolderSync.Now(Path.GetDirectoryName(Path.GetFullPath(path))!);
    }

    /// <summary>Takes from others what they could do with it.</summary>
    public static void Close(string path)
    {
        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~OwnerOnly) != 0) File.SetUnixFileMode(path, OwnerOnly);
    }
}
