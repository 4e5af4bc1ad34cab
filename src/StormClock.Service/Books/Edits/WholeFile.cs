using System.Globalization;
using System.Text;
using StormClock.Service.Store;

namespace StormClock.Service.Books.Edits;

/// <summary>Files that are there whole or not at all, also after a power loss. Trouble with the disk is an IOException.</summary>
internal static class WholeFile
{
    /// <summary>Writes a file where there is none.</summary>
    /// <returns>False, and nothing is touched, where there is one.</returns>
    public static bool Create(string path, string text) => Create(path, text, mode: null);

    private static bool Create(string path, string text, UnixFileMode? mode)
    {
        if (File.Exists(path)) return false;

        return Put(path, text, mode, fresh =>
        {
            try
            {
                File.Move(fresh, path);
                return true;
            }
            catch (IOException) when (File.Exists(path))
            {
                return false;
            }
        });
    }

    /// <summary>Puts a text in place of a file in one step; who may read it stays, and a link to the file stays one.</summary>
    /// <param name="stillGood">Asked when all is ready; no lets everything be as it is.</param>
    public static bool Replace(string path, string text, Func<bool> stillGood)
    {
        var real = Real(path);
        return Put(real, text, ModeOf(real), fresh =>
        {
            if (!stillGood()) return false;

            File.Move(fresh, real, overwrite: true);
            return true;
        });
    }

    /// <summary>Keeps what a file held beside it, under a name that tells the time; nothing that is there is written over.</summary>
    /// <returns>The path it is kept under.</returns>
    public static string KeepOld(string path, string text, Instant now)
    {
        var stem = $"{path}.{now.ToString("uuuuMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture)}";
        for (var number = 1; ; number++)
        {
            var old = number == 1 ? $"{stem}.bak" : $"{stem}-{number}.bak";
            if (Create(old, text, ModeOf(path))) return old;
        }
    }

    /// <summary>The full path of the file itself, behind any links.</summary>
    public static string Real(string path) => new FileInfo(path) is { LinkTarget: not null } link && link.ResolveLinkTarget(returnFinalTarget: true) is { } target ? target.FullName : Path.GetFullPath(path);

    private static UnixFileMode? ModeOf(string path) => OperatingSystem.IsWindows() ? null : File.GetUnixFileMode(path);

    /// <summary>Writes the text to a file beside the place it is for, and has it put there.</summary>
    /// <param name="mode">Who may read it, from its first letter on: it may hold addresses. Null for what is usual.</param>
    private static bool Put(string path, string text, UnixFileMode? mode, Func<string, bool> place)
    {
        var fresh = path + ".new";
        File.Delete(fresh);
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows()) options.UnixCreateMode = mode;
            using (var file = new FileStream(fresh, options))
            {
                file.Write(Encoding.UTF8.GetBytes(text));
                file.Flush(flushToDisk: true);
            }

            // What is usual for new files may take from the mode what the old file had.
            if (mode is { } own && !OperatingSystem.IsWindows()) File.SetUnixFileMode(fresh, own);
            if (!place(fresh)) return false;

            FolderSync.Now(Path.GetDirectoryName(Path.GetFullPath(path))!);
            return true;
        }
        finally
        {
            File.Delete(fresh);
        }
    }
}
