using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <param name="File">Path as given or found.</param>
/// <param name="Read">What reading it brought.</param>
/// <param name="InForce">The book to go by: the one read, else the last good one of the same file; null when there never was one.</param>
public sealed record GardenFile(string File, ReadResult<GardenBook> Read, GardenBook? InForce);

/// <summary>All garden books of an installation. A bad file is refused whole and the others stay.</summary>
public static class GardenFiles
{
    /// <summary>Reads every <c>*.yaml</c> and <c>*.yml</c> of a folder, in order of names; a missing folder has none.</summary>
    /// <param name="last">What the folder held before, so that the last good book of a spoilt file stays in force.</param>
    public static IReadOnlyList<GardenFile> Load(string folder, IReadOnlyList<GardenFile>? last = null)
    {
        if (!Directory.Exists(folder)) return [];

        var files = new List<GardenFile>();
        var paths = Directory.EnumerateFiles(folder).Where(path => Path.GetExtension(path) is ".yaml" or ".yml");
        foreach (var path in paths.Order(StringComparer.Ordinal))
        {
            var read = WithoutTwin(Read(path), files);
            files.Add(new GardenFile(path, read, read.Value ?? last?.FirstOrDefault(file => file.File == path)?.InForce));
        }

        return files;
    }

    /// <summary>The books to go by; practice gardens are for rehearsals and never served.</summary>
    public static IReadOnlyList<GardenBook> Served(IEnumerable<GardenFile> files) =>
        [.. files.Select(file => file.InForce).OfType<GardenBook>().Where(book => !book.Practice)];

    /// <summary>A book, and the table of items beside it where it names one.</summary>
    public static ReadResult<GardenBook> Read(string path)
    {
        var text = TextFile.Read(path);
        var folder = Path.GetDirectoryName(path) ?? "";
        return text.Value is { } found
            ? GardenReader.Read(found, path, name => TextFile.Read(Path.Combine(folder, name)))
            : ReadResult.Bad<GardenBook>(text.Faults);
    }

    /// <summary>Two gardens with one id would answer each other's links: the later file is refused.</summary>
    private static ReadResult<GardenBook> WithoutTwin(ReadResult<GardenBook> read, List<GardenFile> before)
    {
        if (read.Value is not { } book || before.Find(file => file.InForce?.Id == book.Id) is not { } twin) return read;

        return ReadFault.At(1, $"the garden id '{book.Id}' is used by {Path.GetFileName(twin.File)} too; give one of them another id");
    }
}
