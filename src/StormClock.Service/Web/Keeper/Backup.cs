using System.IO.Compression;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Store;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Keeper;

/// <summary>One archive with all an installation needs to go on elsewhere: the database as of one moment, the keys, the photos, and the files of the config folder.</summary>
internal sealed class Backup(HostPlan plan, StormStore store)
{
    /// <summary>Of the data folder, beside the database.</summary>
    public static IReadOnlyList<string> Files { get; } = [AckKeyFile.Name, VapidKeyFile.Name, PasscodeFile.Name];
    public static IReadOnlyList<string> Folders { get; } = ["form-keys", "notes", "photos"];

    /// <summary>Made in a temporary file that goes with its stream: the database may be large.</summary>
    public async Task<Stream> MakeAsync(CancellationToken cancellation)
    {
        var work = Directory.CreateDirectory(Path.Combine(plan.DataFolder, $"backup-{Guid.NewGuid():N}"));
        try
        {
            var database = Path.Combine(work.FullName, StoreFile.DataName);
            await store.BackupAsync(database, cancellation);
            var archive = new FileStream(Path.Combine(work.FullName, "archive"), new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Options = FileOptions.DeleteOnClose });
            using (var zip = new ZipArchive(archive, ZipArchiveMode.Create, leaveOpen: true))
            {
                zip.CreateEntryFromFile(database, $"data/{StoreFile.DataName}");
                foreach (var file in Kept()) zip.CreateEntryFromFile(file, $"data/{Slashes(Path.GetRelativePath(plan.DataFolder, file))}");
                foreach (var file in plan.ConfigFolder is { } config ? Directory.EnumerateFiles(config, "*", SearchOption.AllDirectories) : [])
                    zip.CreateEntryFromFile(file, $"config/{Slashes(Path.GetRelativePath(plan.ConfigFolder!, file))}");
            }

            archive.Position = 0;
            File.Delete(database);
            return archive;
        }
        finally
        {
            // An open file keeps its content where the system lets its folder go; where not, the folder goes with the next backup.
            Forget(work);
        }
    }

    private IEnumerable<string> Kept() =>
        Files.Select(name => Path.Combine(plan.DataFolder, name)).Where(File.Exists)
            .Concat(Folders.Select(name => Path.Combine(plan.DataFolder, name)).Where(Directory.Exists).SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)));

    private static string Slashes(string path) => path.Replace('\\', '/');

    private void Forget(DirectoryInfo work)
    {
        foreach (var folder in Directory.EnumerateDirectories(plan.DataFolder, "backup-*").Append(work.FullName).Distinct())
        {
            try
            {
                Directory.Delete(folder, recursive: true);
            }
            catch (IOException)
            {
            }
        }
    }
}
