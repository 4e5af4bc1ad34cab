using System.IO.Compression;
using System.IO.Hashing;
using StormClock.Service.Store;

namespace StormClock.Service.Commands.Restoring;

/// <summary>Unpacks the files of a backup into a new folder, each checked against the length and the checksum that the archive gives it.</summary>
internal static class ArchiveFiles
{
    private const int Block = 80 * 1024;

    /// <summary>The first fault; null when all is there and on the disk.</summary>
    /// <param name="below">Of the archive, such as <c>data/</c>.</param>
    /// <param name="folder">New, and only its owner's.</param>
    /// <param name="secret">The files are only their owner's too.</param>
    public static string? Unpack(ZipArchive archive, string below, string folder, bool secret)
    {
        MakeFolder(folder);
        foreach (var entry in archive.Entries.Where(entry => entry.FullName.StartsWith(below, StringComparison.Ordinal)))
        {
            var path = Path.Combine(folder, entry.FullName[below.Length..]);
            MakeFolder(Path.GetDirectoryName(path)!);
            if (!Copy(entry, path, secret)) return $"is damaged: {ArchiveEntries.Shown(entry.FullName)} does not unpack to what was packed";
        }

        foreach (var made in Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories).Append(folder)) FolderSync.Now(made);
        return null;
    }

    /// <summary>False where more or less comes out than the archive says, or something else.</summary>
    private static bool Copy(ZipArchiveEntry entry, string path, bool secret)
    {
        var (sum, length, block) = (new Crc32(), 0L, new byte[Block]);
        try
        {
            using var packed = entry.Open();
            using var file = New(path, secret);
            for (int read; (read = packed.Read(block)) > 0;)
            {
                length += read;
                if (length > entry.Length) return false;
                sum.Append(block.AsSpan(0, read));
                file.Write(block, 0, read);
            }

            file.Flush(flushToDisk: true);
        }
        catch (InvalidDataException)
        {
            return false;
        }

        return length == entry.Length && sum.GetCurrentHashAsUInt32() == entry.Crc32;
    }

    private static FileStream New(string path, bool secret)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (secret && !OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }

    private static void MakeFolder(string folder)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
