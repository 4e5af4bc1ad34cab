using System.Security.Cryptography;
using StormClock.Core;
using StormClock.Service.Books;
using StormClock.Service.Store;
using StormClock.Service.Wording;

namespace StormClock.Service.Photos;

/// <summary>
/// The photos of all gardens, under <c>photos/GARDEN/</c> of the data folder. Nothing that comes from outside becomes a part of a path
/// unless it has the shape of a garden's id or of a name made here. Files only: what they show is in <see cref="PhotoNotes"/>.
/// </summary>
/// <param name="dataFolder">The data folder, which only one process uses at a time.</param>
public sealed class PhotoShelf(string dataFolder)
{
    private const int NameLength = 32;

    /// <summary>Characters of a subject in a file's name, which may have 255 on any system.</summary>
    private const int LongestTold = 140;
    private const string Ending = ".jpg";
    private const string ThumbnailEnding = "-small.jpg";
    private const string AsideFolder = "gone";

    // Not names of files or folders on Windows, whatever their ending.
    private static readonly HashSet<string> Devices =
        [.. new[] { "con", "prn", "aux", "nul" }.Concat(Enumerable.Range(0, 10).SelectMany(digit => new[] { $"com{digit}", $"lpt{digit}" }))];

    private readonly string root = Path.Combine(dataFolder, "photos");
    private readonly Lock gate = new();

    /// <summary>Puts a photo and its thumbnail away; both are on the disk when it returns.</summary>
    /// <param name="speech">How whoever sent it is told that the shelf is full.</param>
    /// <returns>
    /// Its name, 32 lower-case hexadecimal digits that nobody can guess; a fault that can be shown to the sender when the garden has
    /// too many, and then nothing is changed.
    /// </returns>
    /// <exception cref="ArgumentException">The garden's id is none that a book may have.</exception>
    /// <exception cref="IOException">The disk would not take it. Then there is no photo of that name.</exception>
    public ReadResult<string> Put(string gardenId, Photo photo, Speech speech)
    {
        var folder = FolderOf(gardenId) ?? throw new ArgumentException($"'{gardenId}' is no id of a garden.", nameof(gardenId));
        lock (gate)
        {
            StoreFile.CreateFolder(root);
            StoreFile.CreateFolder(folder);
            ClearLeftovers(folder);
            if (Overfull(folder, photo) is { } refusal) return speech.For(refusal);

            var name = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(NameLength / 2));
            SecretFile.Write(Path.Combine(folder, name + ThumbnailEnding), photo.Thumbnail.Span);
            SecretFile.Write(Path.Combine(folder, name + Ending), photo.Jpeg.Span);
            return name;
        }
    }

    /// <summary>Opens a photo, or its thumbnail; null when there is none of that garden and name.</summary>
    public FileStream? Find(string gardenId, string name, bool thumbnail = false)
    {
        if (PathOf(gardenId, name, thumbnail ? ThumbnailEnding : Ending) is not { } path) return null;
        try
        {
            return new(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Takes a photo and its thumbnail away for good; nothing happens when there is none.</summary>
    public void Remove(string gardenId, string name)
    {
        if (PathOf(gardenId, name, Ending) is not { } path) return;
        lock (gate)
        {
            if (!Directory.Exists(Path.GetDirectoryName(path))) return;

            // The thumbnail first: what a crash leaves is still found under its name and can be removed again.
            File.Delete(PathOf(gardenId, name, ThumbnailEnding)!);
            File.Delete(path);
            FolderSync.Now(Path.GetDirectoryName(path)!);
        }
    }

    /// <summary>
    /// Moves a photo into the garden's folder <c>gone</c>, where no page shows it any more, under a name that tells a person what it was of
    /// and when it came, such as <c>item-fig-pots-20270914-NAME.jpg</c>. Nothing happens when it is there already.
    /// </summary>
    /// <exception cref="IOException">The disk would not do it. Then the photo is where it was.</exception>
    public void SetAside(PhotoNote note)
    {
        if (PathOf(note.GardenId, note.FileName, Ending) is not { } path) return;
        lock (gate)
        {
            if (!File.Exists(path)) return;
            var folder = Path.Combine(Path.GetDirectoryName(path)!, AsideFolder);
            StoreFile.CreateFolder(folder);
            File.Move(path, Path.Combine(folder, $"{Told(note.Subject)}-{note.At.InUtc().Date:yyyyMMdd}-{Path.GetFileName(path)}"));
            FolderSync.Now(folder);

            // Its thumbnail can be made again; one that is left over by a crash goes with the next photo that is put.
            File.Delete(PathOf(note.GardenId, note.FileName, ThumbnailEnding)!);
            FolderSync.Now(Path.GetDirectoryName(path)!);
        }
    }

    /// <summary>As a part of a file's name.</summary>
    private static string Told(string subject) => string.Concat(subject.Take(LongestTold).Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-'));

    /// <summary>The names of all photos of a garden, in no order that means anything; for finding those that no note names.</summary>
    public IReadOnlyList<string> Names(string gardenId) =>
        FolderOf(gardenId) is { } folder && Directory.Exists(folder) ? [.. Photos(folder).Select(file => file.Name[..NameLength])] : [];

    private static PhotoRefusal? Overfull(string folder, Photo photo)
    {
        if (Photos(folder).Count() >= PhotoLimits.PhotosOfGarden) return PhotoRefusal.TooMany;
        var bytes = new DirectoryInfo(folder).EnumerateFiles("*", SearchOption.AllDirectories).Sum(file => file.Length) + photo.Jpeg.Length + photo.Thumbnail.Length;
        return bytes > PhotoLimits.BytesOfGarden ? PhotoRefusal.NoRoom : null;
    }

    /// <summary>What a crash or a full disk left of an earlier try, under names that nobody was told.</summary>
    private static void ClearLeftovers(string folder)
    {
        var whole = Photos(folder).Select(file => file.Name[..NameLength]).ToHashSet();
        foreach (var path in Directory.GetFiles(folder))
        {
            var name = Path.GetFileName(path);
            var alone = name.EndsWith(ThumbnailEnding, StringComparison.Ordinal) && !whole.Contains(name[..^ThumbnailEnding.Length]);
            if (alone || name.EndsWith(".part", StringComparison.Ordinal)) File.Delete(path);
        }
    }

    private static IEnumerable<FileInfo> Photos(string folder) =>
        new DirectoryInfo(folder).EnumerateFiles().Where(file => file.Name.Length == NameLength + Ending.Length && file.Name.EndsWith(Ending, StringComparison.Ordinal));

    private string? PathOf(string gardenId, string name, string ending) =>
        IsName(name) && FolderOf(gardenId) is { } folder ? Path.Combine(folder, name + ending) : null;

    private static bool IsName(string name) => name.Length == NameLength && name.All(char.IsAsciiHexDigitLower);

    /// <summary>A book's id is a folder's name, except that of a device, which gets an end that no id has.</summary>
    private string? FolderOf(string gardenId) =>
        !YamlFields.IsId(gardenId) || gardenId.EndsWith('\n') ? null : Path.Combine(root, Devices.Contains(gardenId) ? gardenId + "-" : gardenId);
}
