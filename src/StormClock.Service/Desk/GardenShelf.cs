using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Desk;

/// <summary>The garden books in force. A spoilt file is told once and its last good book stays in force.</summary>
public sealed class GardenShelf
{
    private readonly Lock turn = new();
    private IReadOnlyList<GardenFile> files = [];
    private IReadOnlyList<string> told = [];

    /// <summary>Fixed books, as a rehearsal has.</summary>
    public GardenShelf(IReadOnlyList<GardenBook> books) => Books = books;

    /// <summary>The books of a folder, read now and again whenever <see cref="Refresh"/> is called, which tells the faults. Practice gardens are never served.</summary>
    public GardenShelf(string folder)
    {
        Folder = folder;
        files = GardenFiles.Load(folder);
        Books = GardenFiles.Served(files);
    }

    public IReadOnlyList<GardenBook> Books { get; private set; }

    /// <summary>Where the books are kept; null for fixed ones.</summary>
    public string? Folder { get; }

    /// <summary>Reads the folder again; the faults that are new since the last time, each with file and line.</summary>
    public IReadOnlyList<string> Refresh()
    {
        if (Folder is null) return [];
        lock (turn)
        {
            files = GardenFiles.Load(Folder, files);
            Books = GardenFiles.Served(files);
            var faults = files.SelectMany(file => file.Read.Faults.Select(fault => fault.ToldOf(file.File))).ToList();
            var fresh = faults.Except(told).ToList();
            told = faults;
            return fresh;
        }
    }

    /// <summary>The file of a book in force; null where it has none.</summary>
    public string? FileOf(string gardenId) => files.FirstOrDefault(file => file.InForce is { Practice: false } book && book.Id == gardenId)?.File;

    public GardenBook? Find(string gardenId) => Books.FirstOrDefault(book => book.Id == gardenId);
}
